import type { Point } from '../geometry/index.ts';
import type { EdgeId, Level, PieceId } from './piece.ts';
import type { MeasureId } from './measure/measure-id.ts';
import type { Step } from './fitting.ts';

/** error: cannot be cut as it is. warning: a careful sewist would stop and look. note: worth knowing. */
export type Severity = 'error' | 'warning' | 'note';

/** A fact about this garment on this body, never repaired or dropped in silence. */
export interface Finding {
  /** Stable, kebab-case: `seam-differs`, `girth-off-target`. */
  readonly code: string;
  readonly severity: Severity;
  readonly where: {
    readonly piece?: PieceId;
    readonly edge?: EdgeId;
    readonly seam?: string;
    readonly level?: Level;
    readonly measure?: MeasureId;
    /** Step of the stack that met it. */
    readonly step?: string;
    readonly at?: Point;
  };
  /** mm (or mm² / degrees where the message says so). */
  readonly amount?: number;
  /** One or two plain sentences with the amounts in mm and inches; see say.ts. */
  readonly message: string;
  /** Steps that would settle it, and the words for the button. */
  readonly remedy?: { readonly say: string; readonly steps: readonly Step[] };
}
