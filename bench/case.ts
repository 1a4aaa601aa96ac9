/**
 * One timed case. `setup` and `before` are not timed; `run` is, repeatedly. With `before` every round has a state of its own (objects
 * nobody has seen, so that nothing of them is remembered). `note` may add a line from what it measured (a ratio to a limit, or to the first
 * case of its file). Each case runs in a process of its own: what another left in memory and in the compiler does not weigh on it.
 */
export interface Case {
  readonly name: string;
  readonly setup?: () => unknown;
  readonly before?: (state: never) => unknown;
  readonly run: (state: never) => unknown;
  readonly note?: (medianMs: number, state: never, firstMs: number) => string;
}
