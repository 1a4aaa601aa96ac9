/** One timed case. `setup` is not timed; `run` is, repeatedly. `note` may add a line from what it measured (a ratio to a limit). */
export interface Case {
  readonly name: string;
  readonly setup?: () => unknown;
  readonly run: (state: never) => unknown;
  readonly note?: (medianMs: number, state: never) => string;
}
