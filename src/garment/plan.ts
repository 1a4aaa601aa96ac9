import type { Finding } from './finding.ts';
import type { Level } from './piece.ts';
import type { Phrase } from './words/phrase.ts';

/** How a number came about: the formula in words with its values, and who says so. */
export interface Why {
  readonly sentence: Phrase;
  readonly source?: string;
}

/** All lengths in mm. Girths are all round. Per seam and per edge are equal shares; `shares` holds the uneven ones. */
export interface LevelPlan {
  readonly level: Level;
  readonly body: number;
  readonly chartBody: number | null;
  readonly finished: number;
  readonly patternEase: number;
  readonly wantedEase: number;
  readonly target: number;
  /** Size id; for method `part` the label of the nearest. */
  readonly size: string;
  /** Fractional index into the pattern's sizes: what the blend uses. */
  readonly sizeIndex: number;
  /** Target less finished, mm all round. */
  readonly residual: number;
  /** What of the residual a bust alteration among the steps gives, so that the seams need not, mm all round. */
  readonly altered?: number;
  readonly seams: number;
  readonly edges: number;
  readonly perSeam: number;
  readonly perEdge: number;
  /** Change of each movable cut edge at this level, drawn outline (a mirrored twin or fold half gets the same). Outward is positive. */
  readonly shares: readonly { readonly piece: string; readonly edge: string; readonly change: number }[];
  /** What of the residual goes to the front and to the back, when they differ from an even share. */
  readonly split?: { readonly front: number; readonly back: number; readonly why: Why };
  readonly why: {
    readonly size: Why;
    readonly target: Why;
    readonly residual: Why;
    readonly ease: Why;
  };
}

export interface LengthPlan {
  readonly measure: string;
  readonly body: number;
  readonly pattern: number;
  readonly ease: number;
  /** Lengthen (+) or shorten (−) by. */
  readonly residual: number;
  readonly why: Why;
}

export interface Plan {
  /** Size of neck, shoulder and armhole. */
  readonly base: { readonly size: string; readonly sizeIndex: number; readonly why: Why };
  readonly levels: readonly LevelPlan[];
  readonly lengths: readonly LengthPlan[];
  readonly findings: readonly Finding[];
}

/** A cut edge that crosses a level and may move. `times` = how many cut edges of the garment it stands for (fold half or pair: 2). */
export interface MovableEdge {
  readonly piece: string;
  readonly edge: string;
  readonly seam: string;
  readonly times: number;
  readonly side: 'front' | 'back' | 'both';
}
