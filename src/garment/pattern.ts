import type { DrawnPiece, Level, NestedPiece } from './piece.ts';
import type { Band, Follower, GarmentLevel, Seam } from './seam.ts';
import type { SizeChart } from './chart.ts';
import type { Wearer } from './words/tell.ts';
import type { GarmentKind } from './garment-kind-table.ts';

/** What the pattern is drafted for. Stretch is a share: 0.25 = 4 in stretches to 5 in. */
export type ClothNeed = { readonly kind: 'woven' } | { readonly kind: 'knit'; readonly stretch: number };

/** A multi-size pattern: pieces in all sizes, how they join, and the maker's table. */
export interface Pattern {
  readonly format: 'pintrue-pattern';
  readonly version: 2;
  readonly id: string;
  readonly name: string;
  readonly about: string;
  readonly garment: GarmentKind;
  readonly wearer: Wearer;
  readonly cloth: ClothNeed;
  /** How much fuller the full bust is than the upper bust that it is drafted for, mm; absent where nobody said. */
  readonly bustDifference?: number;
  readonly chart: SizeChart;
  readonly pieces: readonly NestedPiece[];
  readonly seams: readonly Seam[];
  readonly followers: readonly Follower[];
  readonly bands: readonly Band[];
  readonly levels: readonly GarmentLevel[];
  /** Level at which the garment ends, if it ends above the hip: judged at its own hem. */
  readonly endsAt?: Level;
  /** Whether a child will sleep or lounge in it; absent where nobody was asked. */
  readonly nightwear?: boolean;
  /** Cautions its maker names, beside those that follow by rule: see `cautionsFor`. */
  readonly cautions: readonly string[];
}

/** The working set of one person's garment: what alterations take and give. */
export interface Garment {
  readonly pieces: readonly DrawnPiece[];
  readonly seams: readonly Seam[];
  readonly followers: readonly Follower[];
  readonly bands: readonly Band[];
  readonly levels: readonly GarmentLevel[];
}
