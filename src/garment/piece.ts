import type { Path, Point } from '../geometry/index.ts';
import type { LevelReason } from './level-reason.ts';
import type { EdgeRole, Half, PieceHalf, PieceRole, SignRole } from './role-table.ts';

/**
 * One shape serves the nested piece (one value per size) and the drawn piece (one person's own line):
 * the same topology, so that a blend is a map from one to the other.
 */
export type Nesting = 'nest' | 'one';
/** `T` once, or once per size in the order of the pattern's sizes. */
export type Per<N extends Nesting, T> = N extends 'nest' ? readonly T[] : T;

/** Where on the body a corner or a line belongs; decides whose size it takes. See LEVELS in level.ts. */
export type Level = string;
export type PieceId = string;
export type EdgeId = string;

/** seam: joined to another edge. dart: a dart's leg. fold: cut on the fold of the cloth. hem: turned up.
 *  opening: fastened (zip, buttons). free: bound, faced or left; finished by itself. */
export type EdgeKind = 'seam' | 'dart' | 'fold' | 'hem' | 'opening' | 'free';

export interface Notch<N extends Nesting> {
  /** Notches that meet bear the same id on both edges, e.g. `armhole-front`. */
  readonly id: string;
  /** Share of the edge's arc length from its start, 0..1. */
  readonly at: Per<N, number>;
  /** 1 = front, 2 = back, 3 = centre back or other (trade habit). */
  readonly count: 1 | 2 | 3;
  readonly role?: SignRole;
}

/** A named run of the outline between two corners. Edges follow one another counter-clockwise. */
export interface Edge<N extends Nesting> {
  readonly id: EdgeId;
  /** As a sewist would say it: `side`, `armhole`, `front neck`. Free text: nothing is read out of it. */
  readonly name: string;
  readonly kind: EdgeKind;
  /** What it is to the garment; absent where unknown, and on a dart's legs, which their kind describes. */
  readonly role?: EdgeRole;
  /** What it is besides: a wrap front's free edge is `free-outer` and `opening`. */
  readonly also?: EdgeRole;
  /** Front or back, on a piece that goes round both or round an arm. */
  readonly half?: Half;
  /** What it is was guessed from a drawing, or is not known, and nobody has said it since. */
  readonly unsure?: true;
  readonly path: Per<N, Path>;
  /** Level of the corner where this edge starts (its end is the next edge's start). */
  readonly from: Level;
  /** Levels crossed between its corners, by share of arc length, increasing. The blend changes size between them. */
  readonly crossings: readonly { readonly level: Level; readonly at: Per<N, number> }[];
  /** Width of the seam or hem allowance, mm. 0 on a fold. */
  readonly allowance: number;
  readonly notches: readonly Notch<N>[];
}

/**
 * grain: the grainline. level: where a girth is measured (its `level` says which), drawn from outline to outline.
 * adjust: the printed lengthen/shorten line. fold, placement, stitch: as drawn on paper.
 */
export type LineKind = 'grain' | 'level' | 'adjust' | 'fold' | 'placement' | 'stitch';

export interface InnerLine<N extends Nesting> {
  readonly id: string;
  readonly kind: LineKind;
  readonly level?: Level;
  /** Nobody drew it: by what it is proposed, until a person says where it runs. */
  readonly proposed?: LevelReason;
  readonly path: Per<N, Path>;
}

/** A mark inside the piece: bust point, dart end, button, pocket corner. `level` decides whose size it takes. */
export interface Mark<N extends Nesting> {
  readonly id: string;
  readonly kind: 'bust-point' | 'dart-point' | 'dot' | 'button' | 'drill';
  readonly level: Level;
  readonly role?: SignRole;
  readonly at: Per<N, Point>;
}

/**
 * A dart open to the outline: its two legs are consecutive edges of kind `dart`, first leg to second leg counter-clockwise, meeting at its point.
 * `foldToward` says which leg's side the cloth is pressed to, for the shape of the cap outside the stitching line.
 */
export interface Dart {
  readonly id: string;
  readonly name: string;
  readonly legs: readonly [EdgeId, EdgeId];
  readonly foldToward: 'first' | 'second';
  /** The level whose fullness it serves: its point moves with that level. */
  readonly serves: Level;
}

export type Cloth = 'shell' | 'lining' | 'interfacing' | 'contrast';

/** The wearer's own left and right. */
export type BodySide = 'left' | 'right';
/** Where a part is worn; `both`: across the middle, or of no side. */
export type WornSide = BodySide | 'both';

/** A part that is cut from a drawn outline. */
export interface Worn {
  readonly side: WornSide;
  /** `down`: cut with the outline turned over, a mirror image. */
  readonly face: 'up' | 'down';
  /** Where left and right lie one upon the other (a wrap, a button front): which this is. */
  readonly lies?: 'over' | 'under';
}

export interface PieceOf<N extends Nesting> {
  readonly id: PieceId;
  readonly name: string;
  /** What it is and where it is worn; absent where unknown. */
  readonly role?: PieceRole;
  readonly half?: PieceHalf;
  /** As at an edge. */
  readonly unsure?: true;
  /** 1, 2, 3 … as printed on the piece. */
  readonly number: number;
  readonly cloth: Cloth;
  /** The piece it was parted from when left and right came to differ; that piece may be no longer there. */
  readonly of?: PieceId;
  /**
   * One entry for each part cut from the outline, at least one. The outline is drawn the way they are cut: none is turned over, or half of
   * them are (of an odd number the smaller half). A fold edge doubles each part.
   */
  readonly worn: readonly Worn[];
  readonly edges: readonly Edge<N>[];
  readonly darts: readonly Dart[];
  readonly lines: readonly InnerLine<N>[];
  readonly marks: readonly Mark<N>[];
}

/** A piece as bought: all sizes, one topology. */
export type NestedPiece = PieceOf<'nest'>;
/** A piece as drawn for one person. */
export type DrawnPiece = PieceOf<'one'>;
