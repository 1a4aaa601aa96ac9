import type { Finding } from './finding.ts';
import type { Level } from './piece.ts';
import type { Phrase } from './words/phrase.ts';

/** How a number came about: the formula in words with its values, and who says so. */
export interface Why {
  readonly sentence: Phrase;
  readonly source?: string;
}

/** Where what the size leaves over goes, mm all round; the three parts sum to the residual. */
export interface LeftOver {
  /** Given by a bust alteration among the steps, so that the seams need not. */
  readonly altered: number;
  /** Taken by the seams. */
  readonly seams: number;
  /** Taken by nothing: no seam may move there. */
  readonly open: number;
}

/** Cut edges of the garment that all take the same. */
export interface EdgeGroup {
  /** Where they lie: `both` on pieces that go round, `all` where every moving edge takes the same. */
  readonly side: 'front' | 'back' | 'both' | 'all';
  readonly edges: number;
  /** Change of each, mm; outward is positive. */
  readonly each: number;
}

/**
 * All lengths in mm. Girths are all round. What adds up, to the last digit a number holds: body + wantedEase = target;
 * finished + residual = target; leftOver.altered + seams + open = residual; perSeam × seams = perEdge × edges = Σ each × edges of the groups =
 * leftOver.seams. Rounded for show it need not: `addUp` says where.
 */
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
  readonly leftOver: LeftOver;
  /** How many seams take part, and their cut edges: two to a seam. */
  readonly seams: number;
  readonly edges: number;
  /** Mean shares of what the seams take; what each edge takes says `groups`. */
  readonly perSeam: number;
  readonly perEdge: number;
  /** The cut edges by what each takes: one group where all take the same, none where none moves. */
  readonly groups: readonly EdgeGroup[];
  /** Change of each movable cut edge at this level, drawn outline (a mirrored twin or fold half gets the same). Outward is positive. */
  readonly shares: readonly { readonly piece: string; readonly edge: string; readonly change: number }[];
  /** What of leftOver.seams goes to the front and to the back, when they differ from an even share. */
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
