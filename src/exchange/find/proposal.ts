import type { Box, Path, Point } from '../../geometry/index.ts';
import type {
  BodySide,
  Cloth,
  EdgeKind,
  EdgeRef,
  EdgeRole,
  Finding,
  Half,
  LineKind,
  Pattern,
  Phrase,
  PieceHalf,
  PieceRole,
  SignRole,
  Size,
} from '../../garment/index.ts';
import type { Drawing } from '../drawing/drawing.ts';
import type { Asks } from './ask.ts';
import type { Assembly } from '../tiles/assembly.ts';

/** Something found, with why it was taken so: every proposal carries its evidence, shown to the person. */
export type Evidence = Phrase;

export interface ProposedSize extends Size {
  /** What tells its lines apart: layer, colour or dash. */
  readonly evidence: Evidence;
}

export interface ProposedNotch {
  /** Share of the edge's length from its start, per size. */
  readonly at: readonly number[];
  readonly count: 1 | 2 | 3;
  readonly role?: SignRole;
  readonly evidence: Evidence;
  /** How sure its role is, 0..1, and why it is thought so; absent where its maker wrote it. */
  readonly confidence?: number;
  readonly because?: Evidence;
}

/** Where an edge lies on its piece as drawn. */
export type Place = 'left' | 'right' | 'above' | 'below';

export interface ProposedEdge {
  readonly id: string;
  readonly name: string;
  readonly kind: EdgeKind;
  /** Absent on folds and darts, and where its maker wrote its name. */
  readonly place?: Place;
  /** What it is to the garment, where that was found or its maker wrote it. */
  readonly role?: EdgeRole;
  readonly also?: EdgeRole;
  readonly half?: Half;
  /** One run per size, all of one topology, sheet mm, counter-clockwise. */
  readonly paths: readonly Path[];
  readonly lengths: readonly number[];
  /** Turn of the outline at its start and end in the middle size, radians, left positive. */
  readonly turns: readonly [number, number];
  readonly notches: readonly ProposedNotch[];
  /** Largest distance of the fit from the drawn line, mm. */
  readonly off: number;
  /** Words that are written along it and name an edge, and what they may mean. */
  readonly along?: { readonly words: string; readonly roles: readonly EdgeRole[] };
  /** How far inside it its stitching line is drawn, mm; absent where only one line is. */
  readonly inside?: number;
  readonly evidence: Evidence;
  /** How sure role and half are, 0..1, and why they are thought so. */
  readonly confidence?: number;
  readonly because?: Evidence;
  /** A person said what it is. */
  readonly told?: true;
  /** What else it may be, the likeliest first. */
  readonly otherwise?: readonly { readonly role: EdgeRole; readonly half?: Half }[];
}

export interface ProposedLine {
  readonly id: string;
  readonly kind: LineKind;
  readonly level?: string;
  readonly paths: readonly Path[];
  readonly evidence: Evidence;
}

export interface ProposedMark {
  readonly id: string;
  readonly kind: 'bust-point' | 'dart-point' | 'dot';
  /** Per size. */
  readonly at: readonly Point[];
  readonly evidence: Evidence;
}

export interface ProposedPiece {
  readonly id: string;
  readonly name: string;
  readonly cloth: Cloth;
  /** As it says on it. */
  readonly cut: { readonly count: number; readonly mirrored: boolean };
  /** Where it is worn, if on one side only. */
  readonly side?: BodySide;
  readonly edges: readonly ProposedEdge[];
  readonly lines: readonly ProposedLine[];
  readonly marks: readonly ProposedMark[];
  /** mm² by size. */
  readonly areas: readonly number[];
  /** Direction of its grain: unit vector, upwards as drawn. */
  readonly grain: { readonly direction: Point; readonly evidence: Evidence };
  readonly darts: readonly { readonly legs: readonly [string, string]; readonly evidence: Evidence }[];
  /** Words found on it. */
  readonly words: readonly string[];
  readonly box: Box;
  readonly evidence: Evidence;
  /** What it is; absent where unknown. A follower has the role and half of what it follows. */
  readonly role?: PieceRole;
  readonly half?: PieceHalf;
  /** How sure role and half are, 0..1, and why they are thought so. */
  readonly confidence?: number;
  readonly because?: Evidence;
  /** What else it may be, the likeliest first. */
  readonly otherwise?: readonly { readonly role: PieceRole; readonly half?: PieceHalf }[];
  /** How it was drawn, seen from our custom (grain upright, centre on the left): turned over, and turned so many quarters to the left. */
  readonly drawn?: { readonly over: boolean; readonly quarter: 0 | 1 | 2 | 3 };
}

export interface ProposedSeam {
  readonly id: string;
  readonly name: string;
  readonly a: readonly EdgeRef[];
  readonly b: readonly EdgeRef[];
  /** 0..1. */
  readonly score: number;
  /** 1 is the first choice for its edges; higher ranks are the alternatives offered. */
  readonly rank: number;
  /** a − b in every size, mm. */
  readonly extra: readonly number[];
  readonly evidence: Evidence;
}

export interface ProposedFollower {
  readonly piece: string;
  readonly parent: string;
  readonly role: 'facing' | 'lining' | 'interfacing' | 'pocket';
  /** Per size: moves the follower onto its parent. */
  readonly onto: readonly {
    readonly angle: number;
    readonly dx: number;
    readonly dy: number;
    readonly mirror?: boolean;
  }[];
  readonly edges: readonly { readonly own: string; readonly parent: string; readonly apart?: boolean }[];
  readonly evidence: Evidence;
}

export interface ScaleFound {
  /** What all lengths were multiplied by. */
  readonly factor: number;
  readonly evidence: Evidence;
  /** True when a printed length of known size agrees. */
  readonly proven: boolean;
}

/** All that was found in a file; nothing of it is final until a person has looked. */
export interface Proposal {
  readonly name: string;
  readonly unitsFrom: Phrase;
  readonly scale: ScaleFound;
  readonly assembly: Assembly;
  /** The one sheet everything was found on, after putting together and scaling. */
  readonly sheet: Drawing;
  readonly sizes: readonly ProposedSize[];
  readonly pieces: readonly ProposedPiece[];
  readonly seams: readonly ProposedSeam[];
  readonly followers: readonly ProposedFollower[];
  /** The pieces before it was looked for what they are and what is sewn together: from these it is found again. Absent where their maker wrote it. */
  readonly begun?: readonly ProposedPiece[];
  /** What only a person can say, and what the file says of it. */
  readonly asks: Asks;
  /** The pattern as its maker wrote it, when the file carries it (our own files). */
  readonly whole?: Pattern;
  readonly findings: readonly Finding[];
}
