import type { EdgeId, PieceId } from '../garment/index.ts';

/** One thing that truing did, with its amount before and after, so that it can be shown and judged. */
export type Change =
  | {
      readonly kind: 'seam';
      readonly seam: string;
      /** Walked lengths of its two chains, mm. */
      readonly before: { readonly a: number; readonly b: number };
      readonly after: { readonly a: number; readonly b: number };
    }
  | {
      readonly kind: 'band';
      readonly seam: string;
      readonly piece: PieceId;
      readonly before: number;
      readonly after: number;
    }
  | {
      readonly kind: 'notch';
      readonly seam: string;
      readonly piece: PieceId;
      readonly edge: EdgeId;
      readonly notch: string;
      /** Walked along its chain from the start, mm. */
      readonly before: number;
      readonly after: number;
    }
  | {
      /** Degrees by which the line turned where it crosses the seam, the fold or the folded dart. */
      readonly kind: 'corner';
      readonly joint: string;
      readonly piece: PieceId;
      readonly edge: EdgeId;
      readonly before: number;
      readonly after: number;
    }
  | {
      readonly kind: 'dart';
      readonly piece: PieceId;
      readonly dart: string;
      /** Difference of its legs, mm. */
      readonly before: number;
      readonly after: number;
    };
