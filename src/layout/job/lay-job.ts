import type { Cloth, Fold, Nap, PieceId, Pin } from '../../garment/index.ts';
import type { Point, Ring } from '../../geometry/index.ts';
import type { Match } from './garment-matches.ts';

/** A piece as it is cut: its outline with allowances, in the pattern's own coordinates (mm, counter-clockwise). */
export interface CuttingPiece {
  readonly piece: PieceId;
  readonly name: string;
  readonly number: number;
  readonly cloth: Cloth;
  readonly outline: Ring;
  /** Times the drawn outline is cut (a fold edge doubles each outline, not the count). */
  readonly count: number;
  /** Half of them mirrored. */
  readonly mirrored: boolean;
  /** Two ends of the edge that lies on the fold, as they follow one another counter-clockwise. */
  readonly fold?: readonly [Point, Point];
  /** Grainline, lower end to upper end: its direction is the way the threads (and the nap) run. */
  readonly grain: readonly [Point, Point];
  /** Where stripes or checks must stand; filled by `matchStripes`. Phase (mm) of the pattern along and across the grain, measured from the origin. */
  readonly phase?: { readonly along?: number; readonly across?: number };
}

/** Stripes or checks. Bars that repeat along the length run across the cloth; across ones run down it. 0 or absent: none. */
export interface Repeat {
  readonly along?: number;
  readonly across?: number;
  /**
   * Place of the main bar: from the cut end, or from a crosswise fold (along); from the lower selvage, or from the fold (across). Cloth folded for
   * stripes is folded on the middle of a bar, so on folded cloth leave the one across the fold at 0.
   */
  readonly alongAt?: number;
  readonly acrossAt?: number;
}

/** One cloth and what is to be cut from it. Everything in mm. */
export interface LayJob {
  readonly cloth: Cloth;
  /** Full width, selvage to selvage. */
  readonly width: number;
  /** Kept clear along each selvage. Common practice: half an inch. */
  readonly selvage: number;
  readonly fold: Fold;
  readonly nap: Nap;
  /** Least distance between pieces; a quarter inch with shears is common practice. */
  readonly gap: number;
  readonly pieces: readonly CuttingPiece[];
  /** Areas of the flat, open cloth that are spoilt or used: x from the cut end, y from the lower selvage. */
  readonly flaws: readonly Ring[];
  /** A piece of cloth of any outline instead of a length off the bolt, same coordinates. */
  readonly remnant?: Ring;
  /** The cloth ends here. */
  readonly most?: number;
  readonly repeat?: Repeat;
  /** Where bars must meet: the matches that `matchStripes` found to hold; proven with the lay. */
  readonly matches?: readonly Match[];
  readonly pins: readonly Pin[];
}

/**
 * Where a piece lies on the cloth as it is spread (folded or not): turned counter-clockwise by `rotation` degrees after mirroring
 * (x → −x in its own coordinates), then moved by (x, y). x runs from the cut end, y from the lower selvage or, on folded cloth, from the fold.
 */
export interface Placement {
  readonly piece: PieceId;
  /** 0 … within its piece. */
  readonly copy: number;
  readonly x: number;
  readonly y: number;
  readonly rotation: number;
  readonly mirrored: boolean;
  /** What one cut here gives: one part, a mirrored pair (two layers), a part cut on the fold, or the whole of a fold piece laid open. */
  readonly as: 'single' | 'pair' | 'on-fold' | 'opened';
}

/** A layout of one cloth. */
export interface Lay {
  readonly cloth: Cloth;
  readonly width: number;
  readonly fold: Fold;
  /** Length of the lay as spread (half the cloth's length for a crosswise fold). */
  readonly spread: number;
  /** Cloth used, off the bolt. */
  readonly length: number;
  /** Area cut out ÷ (width × length); layers counted. */
  readonly density: number;
  /** Width folded over, for a partial fold. */
  readonly folded: number;
  readonly placements: readonly Placement[];
}

export const DEFAULT_SELVAGE = 12.7;
export const DEFAULT_GAP = 3;
