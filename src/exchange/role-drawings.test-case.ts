import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { EdgeRole, Half, PieceHalf, PieceRole } from '../garment/index.ts';
import { nearestPlace, pathFlatten, ringContains } from '../geometry/index.ts';
import type { Path, Point } from '../geometry/index.ts';
import type { Proposal, ProposedEdge, ProposedPiece } from './find/proposal.ts';
import { readFile } from './read-file.ts';

/** An edge as its drafter knows it; `at`: the middle of its printed line in the middle size. An edge that `also` is something else is read rightly as either. */
export interface TrueEdge {
  readonly role: EdgeRole;
  readonly also?: readonly EdgeRole[];
  readonly half?: Half;
  readonly fold?: true;
  readonly at: Point;
}

/** A piece as its drafter knows it; `at`: a point inside it in every size. */
export interface TruePiece {
  readonly words: readonly string[];
  readonly role: PieceRole;
  readonly half: PieceHalf;
  /** Other roles that are as right. */
  readonly also?: readonly PieceRole[];
  readonly cloth: string;
  /** Index of the piece whose facing or lining it is. */
  readonly follows?: number;
  readonly at: Point;
  readonly edges: readonly TrueEdge[];
  /** Points of its darts. */
  readonly darts: readonly { readonly at: Point }[];
}

/** Edges as [piece, edge]; the first are longer than the second by `longer`[0] to `longer`[1] mm in every size. */
export interface TrueSeam {
  readonly a: readonly (readonly [number, number])[];
  readonly b: readonly (readonly [number, number])[];
  readonly longer: readonly [number, number];
}

/** What a drawing of fixtures/role-drawings shows. Sheet mm, y up: see the README there. */
export interface DrawingTruth {
  readonly file: string;
  readonly garment: string;
  readonly wearer: 'women' | 'men' | 'children';
  readonly clothKind: 'woven' | 'knit';
  /** Of its words; `none` where it has only numbers. */
  readonly language: string;
  readonly sizes: readonly string[];
  readonly cutLines: boolean;
  readonly stitchingLines: boolean;
  /** mm beyond the stitching line, 0 where only that is printed. */
  readonly allowance: number;
  readonly pieces: readonly TruePiece[];
  readonly seams: readonly TrueSeam[];
}

/** A drawing as it was read beside what it truly shows. */
export interface RoleDrawing {
  readonly truth: DrawingTruth;
  readonly proposal: Proposal;
}

const bytesOf = (name: string): Uint8Array =>
  new Uint8Array(readFileSync(fileURLToPath(new URL(`./fixtures/role-drawings/${name}`, import.meta.url))));

const pointOf = ([x, y]: readonly [number, number]): Point => ({ x, y });

/** The names of all drawings, in the order in which they are made. */
export const ROLE_DRAWINGS = [
  'yoke-skirt',
  'panel-dress',
  'raglan-top',
  'lapel-jacket',
  'yoke-shirt',
  'band-trousers',
  'leggings',
  'dungarees',
  'hooded-top',
  'wrap-dress',
  'kimono-tee',
  'dart-bodice',
] as const;

/** Reads the truth about one of them. */
export function drawingTruth(name: string): DrawingTruth {
  return JSON.parse(new TextDecoder().decode(bytesOf(`${name}.truth.json`)), (key, value: unknown) =>
    key === 'at' ? pointOf(value as [number, number]) : value,
  ) as DrawingTruth;
}

/** Reads one of the drawings as a person would bring it in, and the truth about it. */
export async function readRoleDrawing(name: string): Promise<RoleDrawing> {
  const truth = drawingTruth(name);
  return { truth, proposal: await readFile(bytesOf(truth.file), truth.file) };
}

/** A run in the middle size. */
const middleRun = (edge: ProposedEdge): Path => edge.paths[Math.floor(edge.paths.length / 2)]!;

/** The pieces that were found around a point, in the middle size. */
export const piecesAround = (pieces: readonly ProposedPiece[], at: Point): ProposedPiece[] =>
  pieces.filter((piece) =>
    ringContains(
      piece.edges.flatMap((edge) => pathFlatten(middleRun(edge), 0.5).slice(0, -1)),
      at,
    ),
  );

/** The edge of a piece nearest to a point, and how far that lies from it, mm. */
export function edgeAt(
  piece: ProposedPiece,
  at: Point,
): { readonly edge: ProposedEdge; readonly off: number } {
  return piece.edges
    .map((edge) => ({ edge, off: nearestPlace(middleRun(edge), at).distance }))
    .reduce((best, one) => (one.off < best.off ? one : best));
}

/** A true piece with the one that was found where it lies, and each true edge with the one found there; null where nothing was. */
export interface MatchedPiece {
  readonly known: TruePiece;
  readonly found: ProposedPiece | null;
  readonly edges: readonly { readonly known: TrueEdge; readonly found: ProposedEdge | null }[];
}

/** An edge that lies farther from the point than this is not the one, mm. */
export const EDGE_MM = 1;

/** Matches what was found to what is true by where it lies; a role is no part of it. */
export function matchDrawing({ truth, proposal }: RoleDrawing): MatchedPiece[] {
  return truth.pieces.map((known) => {
    const found = piecesAround(proposal.pieces, known.at)[0] ?? null;
    return {
      known,
      found,
      edges: known.edges.map((edge) => {
        const near = found && edgeAt(found, edge.at);
        return { known: edge, found: near && near.off < EDGE_MM ? near.edge : null };
      }),
    };
  });
}
