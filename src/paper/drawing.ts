import type { EdgeId, PieceId } from '../garment/index.ts';
import type { Box, Path, Point, Ring } from '../geometry/index.ts';
import type { Ink, LayerId } from './ink.ts';

/** A line on paper, mm, y up. Closed where its end is its start. `filled`: its inside is inked and no line is drawn. */
export interface Stroke {
  readonly layer: LayerId;
  readonly path: Path;
  readonly piece?: PieceId;
  readonly edge?: EdgeId;
  readonly filled?: boolean;
  /** Where it differs from its layer's ink. */
  readonly ink?: Partial<Ink>;
}

/** Words on paper. `at` is on the baseline, where `align` says; `size` is the height of the type in mm; `angle` in radians, counter-clockwise. */
export interface Words {
  readonly layer: LayerId;
  readonly at: Point;
  readonly text: string;
  readonly size: number;
  readonly angle: number;
  readonly align: 'start' | 'middle' | 'end';
  readonly bold?: boolean;
  readonly grey?: number;
  readonly piece?: PieceId;
}

/** One piece drawn, or the block with the test squares (`piece` absent), with the ring it takes up on paper. */
export interface Figure {
  readonly piece?: PieceId;
  readonly name: string;
  /** As printed on the piece. */
  readonly number?: number;
  readonly ring: Ring;
  readonly box: Box;
  readonly strokes: readonly Stroke[];
  readonly words: readonly Words[];
}

/** Figures side by side on endless or cut paper; lower left corner at 0, 0. */
export interface Sheet {
  readonly width: number;
  readonly height: number;
  readonly figures: readonly Figure[];
}

/**
 * One page as it leaves the printer, mm from its lower left corner. `drawn` is cut off at `window`, `furniture` is not.
 * The PDF contains exactly this, so that a preview can draw from it.
 */
export interface Page {
  readonly width: number;
  readonly height: number;
  /** `A1`, `B3` on tiles; `map` on the first page of tiles; `1`, `2` on whole sheets. */
  readonly label: string;
  readonly window: Box;
  readonly drawn: { readonly strokes: readonly Stroke[]; readonly words: readonly Words[] };
  readonly furniture: { readonly strokes: readonly Stroke[]; readonly words: readonly Words[] };
}
