import type { Body } from './measure/body.ts';
import type { KeptLay } from './lay-settings.ts';
import type { Level } from './piece.ts';
import type { Pattern } from './pattern.ts';

/** A parameter of an alteration: mm, degrees or a word, as its entry in the catalogue says. */
export type ParamValue = number | string | boolean;

/** One recorded decision about the pieces. Results are never stored; they are recomputed. */
export type Step =
  | {
      readonly id: string;
      readonly kind: 'alter';
      /** Entry of the catalogue, e.g. `forward-shoulder`. */
      readonly entry: string;
      readonly params: Readonly<Record<string, ParamValue>>;
      /** Ids of the observations of a trial that this step answers. */
      readonly answers?: readonly string[];
      readonly note?: string;
      readonly off?: boolean;
    }
  | {
      readonly id: string;
      readonly kind: 'true';
      /** Seams to true; all when absent. `keep` overrides which side stays. */
      readonly seams?: readonly string[];
      readonly keep?: Readonly<Record<string, 'a' | 'b'>>;
      readonly note?: string;
      readonly off?: boolean;
    };

/** The cloth this garment will be made of. Shares: 0.5 = stretches by half; `useful` = share of it that may be used in wear. */
export interface Fabric {
  readonly name: string;
  readonly kind: 'woven' | 'knit';
  readonly stretch?: number;
  readonly useful?: number;
  /** Shrinkage shares from a washed test square, lengthwise and across. */
  readonly shrinkLength?: number;
  readonly shrinkWidth?: number;
}

export type FitCategory = 'close' | 'fitted' | 'semi-fitted' | 'loose' | 'very-loose';

/** What the person wants, where it differs from the pattern's own. */
export interface PlanChoices {
  readonly category?: FitCategory;
  /** Wanted ease in mm all round, by level. */
  readonly ease: Readonly<Record<Level, number>>;
  /** Size id by level; overrides the computed one. `base` is the size of neck, shoulder and armhole. */
  readonly size: Readonly<Record<Level, string>>;
  /**
   * Between two sizes, everywhere; `nearest` takes the smaller only when halfway. Absent: by place, the smaller at neck, shoulder, armhole and
   * bust, the nearest at waist and hip, the larger of a child's heights.
   */
  readonly between?: 'smaller' | 'larger' | 'nearest';
  /** `whole`: each level at one size, the rest spread on the seams. `part`: between sizes by interpolation, no residual. */
  readonly method: 'whole' | 'part';
  /** Which of the taught ways reads the upper-bust rule (trade.md 4): `straight` takes the upper bust for the chart's bust. */
  readonly upperBust: 'chart-difference' | 'two-inches' | 'straight' | 'off';
  /** Seams that may not take part in spreading. */
  readonly still: readonly string[];
  /** Share of each level's residual that goes to the front; by the body's arcs where absent and known, else even. */
  readonly front: Readonly<Record<Level, number>>;
}

/** Something seen in a trial on the body or form; see alter/observe. Amounts in mm at the two ends of the line, as far as they were measured. */
export interface Observation {
  readonly id: string;
  /** Which line, by its id in alter's table of lines; words of a person where none was meant by them. */
  readonly line: string;
  readonly where: 'front' | 'back' | 'all' | 'left' | 'right';
  readonly direction: 'low' | 'high' | 'forward' | 'back' | 'tight' | 'loose' | 'gapes' | 'folds' | 'drags';
  readonly centre?: number;
  readonly side?: number;
  readonly note?: string;
  readonly photos?: readonly string[];
}

/** A finding that is meant so: which one, by its kind, place and amounts, so that it is asked again when it changes; and why. */
export interface Meant {
  readonly code: string;
  readonly where: Readonly<
    Partial<Record<'piece' | 'edge' | 'seam' | 'level' | 'measure' | 'step' | 'size', string>>
  >;
  readonly amounts: readonly number[];
  readonly reason: string;
  /** ISO date, given by the face. */
  readonly on: string;
}

export interface PaperChoices {
  /** By its name, e.g. `a4`, as far as that was decided; else what is at hand where the person's unit is used. */
  readonly paper?: string;
  readonly allowances: boolean;
  readonly nest: 'faint' | 'off';
  readonly pieces?: readonly string[];
}

/** One person's garment: everything decided, nothing computed. */
export interface Fitting {
  readonly format: 'pintrue-fitting';
  readonly version: 2;
  readonly id: string;
  readonly title: string;
  /** ISO date, given by the face, never by the core. */
  readonly on: string;
  readonly body: Body;
  readonly pattern: Pattern;
  readonly fabric: Fabric;
  readonly choices: PlanChoices;
  readonly steps: readonly Step[];
  readonly observations: readonly Observation[];
  /** Findings that were answered; none where absent. */
  readonly meant?: readonly Meant[];
  readonly paper: PaperChoices;
  /** How its cloths are laid, as far as that was decided. */
  readonly lay?: KeptLay;
  readonly notes: string;
}

/** Paper when nobody has said: all that the maker drew. */
export const DEFAULT_PAPER: PaperChoices = { allowances: true, nest: 'faint' };

export const DEFAULT_CHOICES: PlanChoices = {
  ease: {},
  size: {},
  method: 'whole',
  upperBust: 'chart-difference',
  still: [],
  front: {},
};
