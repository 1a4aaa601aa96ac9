/**
 * Passes jobs to a worker one at a time; while one runs, only the newest of those that came since is kept: the ones between
 * were only steps of the hand. A job left out is never answered.
 */
export class Latest<Job, Answer> {
  #running = false;
  #next: { job: Job; done: (answer: Answer) => void; failed: (error: Error) => void } | null = null;
  readonly #run: (job: Job) => Promise<Answer>;

  constructor(run: (job: Job) => Promise<Answer>) {
    this.#run = run;
  }

  ask(job: Job, done: (answer: Answer) => void, failed: (error: Error) => void): void {
    this.#next = { job, done, failed };
    if (!this.#running) void this.#go();
  }

  /** Forgets what has not begun; what runs is answered to nobody. */
  forget(): void {
    this.#next = null;
  }

  async #go(): Promise<void> {
    this.#running = true;
    while (this.#next) {
      const { job, done, failed } = this.#next;
      this.#next = null;
      try {
        const answer = await this.#run(job);
        // A newer job makes this answer stale, yet it is shown: a picture half a step behind the hand beats none.
        done(answer);
      } catch (error) {
        failed(error as Error);
      }
    }
    this.#running = false;
  }
}
