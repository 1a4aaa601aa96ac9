import type { Fitting } from '../../garment/index.ts';
import type { Held } from '../store/kinds.ts';
import type { Made } from '../worker/bench-worker.ts';

/** What every station of an open fitting is given. */
export interface Bench {
  readonly held: Held<Fitting>;
  /** What is shown: the kept document, or what is being tried while a hand holds something. */
  readonly fitting: Fitting;
  readonly made: Made | null;
  /** The fitting that `made` belongs to: an older one while the newest is in the making. */
  readonly madeOf: Fitting | null;
  readonly show: 'in' | 'cm';
  readonly ask: URLSearchParams;
  /** The step whose before and after are looked at. */
  readonly step: string | undefined;
  readonly lookAtStep: (id: string | undefined) => void;
  /** A decision: kept at once, in the list, can be undone. */
  readonly change: (act: (f: Fitting) => Fitting, say: string, merge?: string) => void;
  /** A trial while dragging: shown, not kept. `null` lets go of it. */
  readonly attempt: (act: ((f: Fitting) => Fitting) | null) => void;
}
/** The same once the first result is there. */
export type ReadyBench = Bench & { readonly made: Made };
