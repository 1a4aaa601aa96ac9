import type { Cloth, PieceId } from './piece.ts';

/** Cloths of a garment, in the order in which they are laid and bought. */
export const CLOTHS = ['shell', 'lining', 'interfacing', 'contrast'] as const satisfies readonly Cloth[];

/** How the cloth lies on the table. `double`: both selvages folded to the middle; `partial`: one selvage folded in just enough. */
export const FOLDS = ['none', 'lengthwise', 'crosswise', 'partial', 'double'] as const;
export type Fold = (typeof FOLDS)[number];

/** one-way: every piece's top points the same way. two-way: either way. free: quarter turns too (cloth without grain: felt, leather). */
export const NAPS = ['one-way', 'two-way', 'free'] as const;
export type Nap = (typeof NAPS)[number];

/** What the cloth is cut with. */
export const CUTTING_TOOLS = ['shears', 'rotary', 'laser', 'knife-plotter'] as const;
export type CuttingTool = (typeof CUTTING_TOOLS)[number];

export const FIBRES = ['natural', 'synthetic', 'unknown'] as const;
export type Fibre = (typeof FIBRES)[number];

/** A piece that a person has put down and that is not to move. In cloth coordinates, as a placement. */
export interface Pin {
  readonly piece: PieceId;
  readonly copy: number;
  readonly x: number;
  readonly y: number;
  readonly rotation: number;
  readonly mirrored: boolean;
}

/** A spoilt or used place of the open cloth, a rectangle: from the cut end, from the lower selvage. mm. */
export interface Spoilt {
  readonly fromEnd: number;
  readonly fromEdge: number;
  readonly long: number;
  readonly high: number;
}

/** How one cloth is laid. mm; shares of 1. A fitting keeps of it what was decided; the rest is as usual (`laySettings` of the desk). */
export interface LaySettings {
  readonly width: number;
  readonly fold: Fold;
  readonly nap: Nap;
  readonly gap: number;
  readonly selvage: number;
  /** Stripes or checks that repeat along the cloth, and across it; 0: none. */
  readonly repeatAlong: number;
  readonly repeatAcross: number;
  readonly pins: readonly Pin[];
  readonly spoilt: readonly Spoilt[];
  /** Corners of a remnant in order, x from the cut end, y from the lower edge; fewer than three: off the bolt. */
  readonly remnant: readonly { readonly x: number; readonly y: number }[];
  readonly shrinkLength: number;
  readonly shrinkWidth: number;
  /** Money for a metre or a yard; 0: not known. */
  readonly price: number;
  readonly pricePer: 'metre' | 'yard';
  readonly tool: CuttingTool;
  readonly fibre: Fibre;
}

/** What a fitting keeps of its cloths. */
export type KeptLay = Readonly<Partial<Record<Cloth, Partial<LaySettings>>>>;
