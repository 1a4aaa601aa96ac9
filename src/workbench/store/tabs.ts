import type { DocKey } from './kinds.ts';

/** What tabs of this page tell one another. Nothing leaves the machine: a BroadcastChannel reaches this browser only. */
export type TabWord =
  | { readonly kind: 'changed'; readonly key: DocKey }
  | { readonly kind: 'erased'; readonly keys: readonly DocKey[] }
  | { readonly kind: 'looking'; readonly tab: string; readonly key: DocKey | null; readonly answer: boolean }
  | { readonly kind: 'left'; readonly tab: string };

/** What words travel on: a BroadcastChannel or the like. */
export type Channel = Pick<BroadcastChannel, 'postMessage' | 'addEventListener'>;

/** This tab among its fellows: passes words on, and knows which documents the others have before them. */
export class Tabs {
  readonly #channel: Channel | null;
  readonly #me = crypto.randomUUID();
  readonly #others = new Map<string, DocKey | null>();
  #mine: DocKey | null = null;

  constructor(channel: Channel | null, hear: (word: TabWord) => void) {
    this.#channel = channel;
    channel?.addEventListener('message', (event: MessageEvent<TabWord>) => {
      const word = event.data;
      if (word.kind === 'looking') {
        this.#others.set(word.tab, word.key);
        if (word.answer) this.#say({ kind: 'looking', tab: this.#me, key: this.#mine, answer: false });
      }
      if (word.kind === 'left') this.#others.delete(word.tab);
      hear(word);
    });
    this.#say({ kind: 'looking', tab: this.#me, key: null, answer: true });
  }

  #say(word: TabWord): void {
    this.#channel?.postMessage(word);
  }

  leave(): void {
    this.#say({ kind: 'left', tab: this.#me });
  }

  tell(word: TabWord): void {
    this.#say(word);
  }

  lookAt(key: DocKey | null): void {
    if (key === this.#mine) return;
    this.#mine = key;
    this.#say({ kind: 'looking', tab: this.#me, key, answer: true });
  }

  /** True when another tab has the same document before it. */
  shared(key: DocKey | null): boolean {
    return key !== null && [...this.#others.values()].includes(key);
  }
}
