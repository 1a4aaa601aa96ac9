import type {
  BodySide,
  ClothNeed,
  Cloth,
  EdgeKind,
  EdgeRef,
  EdgeRole,
  GarmentKind,
  Half,
  PieceHalf,
  PieceRole,
  SizeChart,
} from '../../garment/index.ts';

/** What a person says about one proposed edge. */
export interface EdgeCorrection {
  /** Left open what it is: no role is kept, whatever was thought likely. */
  readonly open?: boolean;
  readonly name?: string;
  /** What it is; the rest of the pattern is looked at again with that in mind. */
  readonly role?: EdgeRole;
  readonly also?: EdgeRole;
  readonly half?: Half;
  readonly kind?: EdgeKind;
  /** mm. */
  readonly allowance?: number;
  /** Level of the corner where it starts. */
  readonly from?: string;
}

export interface PieceCorrection {
  /** Left open what it is: no role is kept, whatever was thought likely. */
  readonly open?: boolean;
  readonly name?: string;
  /** What it is and where it is worn; the rest of the pattern is looked at again with that in mind. */
  readonly role?: PieceRole;
  readonly half?: PieceHalf;
  readonly cloth?: Cloth;
  readonly cut?: { readonly count: number; readonly mirrored: boolean };
  /** Where it is worn, if on one side only. */
  readonly side?: BodySide;
  readonly leaveOut?: boolean;
  /** Turns the piece over, or leaves it as drawn: needed where it was not seen by itself that its centre was drawn on the right. */
  readonly mirror?: boolean;
  readonly edges?: Readonly<Record<string, EdgeCorrection>>;
}

/** Everything a person may say about a proposal before it becomes a pattern; ids are those of the proposal. */
export interface Corrections {
  readonly name?: string;
  readonly about?: string;
  readonly garment?: GarmentKind;
  readonly wearer?: 'woman' | 'man' | 'child';
  readonly cloth?: ClothNeed;
  /** New names by the size's proposed id. */
  readonly sizes?: Readonly<Record<string, string>>;
  readonly pieces?: Readonly<Record<string, PieceCorrection>>;
  readonly seams?: {
    /** Seams of a lower rank to take as well. */
    readonly accept?: readonly string[];
    readonly reject?: readonly string[];
    readonly add?: readonly {
      readonly name: string;
      readonly a: readonly EdgeRef[];
      readonly b: readonly EdgeRef[];
    }[];
  };
  /** Ids of pieces that are no followers. */
  readonly notFollowers?: readonly string[];
  /** The maker's table, sizes in the same order. */
  readonly chart?: SizeChart;
  /** How much fuller the full bust is than the upper bust that it is drafted for, mm; null: nobody knows. Absent: what the file says of it. */
  readonly bustDifference?: number | null;
  /** Width of seam allowance drawn inside the outlines, mm: they are cut lines. 0: they are stitching lines. Absent: what the file says of it. */
  readonly included?: number;
  /** Allowance to give to seams that have none said, mm. */
  readonly allowance?: number;
}
