import type { Point } from '../geometry/index.ts';
import type { EdgeId, Level, PieceId } from './piece.ts';
import type { MeasureId } from './measure/measure-id.ts';
import type { Step } from './fitting.ts';
import type { Phrase } from './words/phrase.ts';
import type { FindingValues } from './words/table.ts';

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
    /** Label of the printed size, when several were looked at. */
    readonly size?: string;
    readonly at?: Point;
  };
  /** mm (or mm² / degrees where its sentence says so). */
  readonly amount?: number;
  /** What its sentence says; the room's table of words makes the sentence of it at the face. */
  readonly values: FindingValues;
  /** Steps that would settle it, and the words for the button. */
  readonly remedy?: { readonly say: Phrase; readonly steps: readonly Step[] };
  /** It is meant so, and why: see `withAnswers`. */
  readonly answered?: { readonly reason: string; readonly on: string };
}
