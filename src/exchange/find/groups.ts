/** What hangs together, by links told one at a time (union and find). Members are numbered 0 … `count`. */
export class Groups {
  readonly #above: Int32Array;

  constructor(count: number) {
    this.#above = Int32Array.from({ length: count }, (_, i) => i);
  }

  join(a: number, b: number): void {
    this.#above[this.#first(b)] = this.#first(a);
  }

  joined(a: number, b: number): boolean {
    return this.#first(a) === this.#first(b);
  }

  /** The things given, each group a list, in the order given; `of` says which member a thing goes by. */
  lists<T>(things: readonly T[], of: (thing: T) => number): T[][] {
    const found = new Map<number, T[]>();
    for (const thing of things) {
      const key = this.#first(of(thing));
      const list = found.get(key);
      if (list) list.push(thing);
      else found.set(key, [thing]);
    }
    return [...found.values()];
  }

  #first(i: number): number {
    let at = i;
    while (this.#above[at] !== at) at = this.#above[at] = this.#above[this.#above[at]!]!;
    return at;
  }
}
