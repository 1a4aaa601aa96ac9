import type { EdgeId, Level, PieceId } from './piece.ts';

/** An edge as walked: forwards along its own direction, or backwards. */
export interface EdgeRef {
  readonly piece: PieceId;
  readonly edge: EdgeId;
  readonly backwards?: boolean;
}

/**
 * A seam joins two chains of edges, walked side by side from their common start.
 * `extra` is how much longer chain `a` is meant to be than chain `b`: 0 for a plain seam, a range in mm for an eased one;
 * `ratio` is a : b for a gathered one.
 */
export interface Seam {
  readonly id: string;
  readonly name: string;
  readonly a: readonly EdgeRef[];
  readonly b: readonly EdgeRef[];
  readonly join:
    | { readonly kind: 'plain' }
    | { readonly kind: 'eased'; readonly least: number; readonly most: number }
    | { readonly kind: 'gathered'; readonly least: number; readonly most: number };
  /** Sewing order; a smaller number is sewn first. */
  readonly order: number;
  /** The chain that stays when truing; by default half on each. */
  readonly keep?: 'a' | 'b';
  /** May take part in spreading a residual. A zip seam normally may not. */
  readonly movable: boolean;
}

/** A follower’s edge repeats its parent’s where it lies on it within this, mm: as traced lines do. */
export const REPEATS_MM = 0.6;

/**
 * A piece that repeats (part of) another: facing, lining, interfacing. It is drawn in register with its parent:
 * same coordinates in every size, so that whatever is done to the parent's edge is done to the follower's.
 */
export interface Follower {
  readonly piece: PieceId;
  readonly parent: PieceId;
  readonly role: 'facing' | 'lining' | 'interfacing' | 'pocket';
  /** Which of its edges repeat which of the parent's. `apart`: it runs beside it (a shorter lining hem), it moves the same way all the same. */
  readonly edges: readonly { readonly own: EdgeId; readonly parent: EdgeId; readonly apart?: boolean }[];
}

/** A straight strip sewn along a seam: waistband, cuff, neckband. When the seam's length changes, it is lengthened at the matching place. */
export interface Band {
  readonly piece: PieceId;
  readonly seam: string;
}

/** Two levels of one garment and where they are compared with the body. */
export interface GarmentLevel {
  readonly level: Level;
  /** Pieces (shell) whose `level` lines make up the girth. Empty: only the table knows it. */
  readonly pieces: readonly PieceId[];
}
