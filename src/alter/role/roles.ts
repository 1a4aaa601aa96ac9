import { edgeAt } from '../../garment/index.ts';
import type { DrawnPiece, EdgeRef, Garment, PieceId, Seam } from '../../garment/index.ts';
import { pathAt } from '../../geometry/index.ts';
import { edgeRole, edgesOf, hasEdge } from './edge-role.ts';
import type { EdgeRole } from './edge-role.ts';
import { Refusal } from '../move/refusal.ts';

export type Half = 'front' | 'back';

/** Edges and pieces of a garment by what they are. Everything that looks for `the shoulder seam` looks here. */

export function pieceOf(garment: Garment, id: PieceId): DrawnPiece {
  const piece = garment.pieces.find((p) => p.id === id);
  if (!piece) throw new Refusal('piece-missing', `There is no piece ${id} in this garment.`, { piece: id });
  return piece;
}

/** Pieces that lead: not facings, linings and the like, which go with them, nor bands. */
export function leaders(garment: Garment): DrawnPiece[] {
  const led = new Set([...garment.followers.map((f) => f.piece), ...garment.bands.map((b) => b.piece)]);
  return garment.pieces.filter((p) => !led.has(p.id));
}

export const isSleeve = (piece: DrawnPiece): boolean => hasEdge(piece, 'cap');
export const sleeves = (garment: Garment): DrawnPiece[] => leaders(garment).filter(isSleeve);

/** What a piece's id and name say, remembered: asked for in every alteration. */
const named = new Map<string, Map<string, Half | undefined>>();

function halfByName({ id, name }: DrawnPiece): Half | undefined {
  let names = named.get(id);
  if (!names) named.set(id, (names = new Map()));
  if (names.has(name)) return names.get(name);
  const words = `${id} ${name}`.toLowerCase();
  const front = /front|\bcf\b/.test(words);
  const back = /back|\bcb\b/.test(words);
  const half = front === back ? undefined : front ? 'front' : 'back';
  names.set(name, half);
  return half;
}

/** Front or back by the piece's name; else by the trade's notches (one in front, two behind), on the armhole first. */
export function halfOf(piece: DrawnPiece): Half | undefined {
  const half = halfByName(piece);
  if (half) return half;
  const counts = [...edgesOf(piece, 'armhole'), ...piece.edges].flatMap((e) => e.notches.map((n) => n.count));
  return counts.includes(1) === counts.includes(2) ? undefined : counts.includes(1) ? 'front' : 'back';
}

/** Roles by which a piece is known to be worn round the trunk or the legs. */
const BODY: readonly EdgeRole[] = ['side', 'panel', 'shoulder', 'crotch', 'inseam'];

/**
 * The pieces round the body of one half, from the centre to the side. Collars, cuffs, pockets and bands do not count: they have no seam
 * that runs up and down the body.
 */
export function panels(garment: Garment, half: Half): DrawnPiece[] {
  const found = leaders(garment).filter(
    (p) =>
      !isSleeve(p) &&
      halfOf(p) === half &&
      BODY.some((role) => hasEdge(p, role)) &&
      !/pocket|collar/i.test(p.name),
  );
  const rank = (p: DrawnPiece): number =>
    hasEdge(p, 'centre') || hasEdge(p, 'crotch') ? 0 : hasEdge(p, 'side') ? 2 : 1;
  return found.toSorted((a, b) => rank(a) - rank(b));
}

/** The half's panels, or a Refusal `no-front` / `no-back`. */
export function needPanels(garment: Garment, half: Half): DrawnPiece[] {
  const found = panels(garment, half);
  if (found.length === 0)
    throw new Refusal(
      `no-${half}`,
      `No ${half} piece was found on this pattern: name its pieces and edges first.`,
    );
  return found;
}

/** Panels of a half with an edge of a role, or a Refusal `no-<role>`: "No shoulder seam was found on the front." */
export function withEdge(garment: Garment, half: Half, role: EdgeRole): DrawnPiece[] {
  const found = needPanels(garment, half).filter((p) => hasEdge(p, role));
  if (found.length === 0)
    throw new Refusal(`no-${role}`, `No ${WORD[role]} was found on the ${half} of this pattern.`);
  return found;
}

const WORD: Record<EdgeRole, string> = {
  neck: 'neckline',
  shoulder: 'shoulder seam',
  armhole: 'armhole',
  side: 'side seam',
  waist: 'waist seam',
  hem: 'hem',
  centre: 'centre line',
  panel: 'panel seam',
  cap: 'sleeve cap',
  underarm: 'underarm seam',
  crotch: 'crotch seam',
  inseam: 'inside leg seam',
  dart: 'dart',
  other: 'such edge',
};

/** The sleeves, or a Refusal `no-sleeve`. */
export function needSleeves(garment: Garment): DrawnPiece[] {
  const found = sleeves(garment);
  if (found.length === 0) throw new Refusal('no-sleeve', 'No sleeve was found on this pattern.');
  return found;
}

const roleOf = (garment: Garment, ref: EdgeRef): EdgeRole | undefined => {
  const edge = edgeAt(garment, ref)?.edge;
  return edge && edgeRole(edge);
};

/** Seams between front and back whose edges all have the role, leaders only (linings and facings follow). */
export function seamsOf(
  garment: Garment,
  role: EdgeRole,
): { seam: Seam; front: readonly EdgeRef[]; back: readonly EdgeRef[] }[] {
  const led = new Set(leaders(garment).map((p) => p.id));
  return garment.seams.flatMap((seam) => {
    const refs = [...seam.a, ...seam.b];
    if (!refs.every((r) => led.has(r.piece) && roleOf(garment, r) === role)) return [];
    const half = (chain: readonly EdgeRef[]): Half | undefined => {
      const piece = garment.pieces.find((p) => p.id === chain[0]?.piece);
      return piece && halfOf(piece);
    };
    if (half(seam.a) === 'front' && half(seam.b) === 'back') return [{ seam, front: seam.a, back: seam.b }];
    if (half(seam.a) === 'back' && half(seam.b) === 'front') return [{ seam, front: seam.b, back: seam.a }];
    return [];
  });
}

/** Mean x of a list of edges, at their middles. */
const meanX = (piece: DrawnPiece, roles: readonly EdgeRole[]): number | undefined => {
  const edges = roles.flatMap((role) => edgesOf(piece, role));
  if (edges.length === 0) return undefined;
  return edges.reduce((sum, e) => sum + pathAt(e.path, 0.5).x, 0) / edges.length;
};

/**
 * Whether the piece lies turned over against our custom (centre at the smaller x, side at the larger; front of a sleeve at the smaller).
 * Alterations are worked on it as if it did not.
 */
export function isTurned(piece: DrawnPiece): boolean {
  if (isSleeve(piece)) {
    const edge = (words: RegExp): number | undefined => {
      const e = edgesOf(piece, 'underarm').find((u) => words.test(`${u.id} ${u.name}`.toLowerCase()));
      return e && pathAt(e.path, 0.5).x;
    };
    const front = edge(/front/);
    const back = edge(/back/);
    return front !== undefined && back !== undefined && front > back;
  }
  const inner = meanX(piece, ['centre', 'crotch']) ?? meanX(piece, ['inseam']) ?? meanX(piece, ['panel']);
  const outer = meanX(piece, ['side', 'armhole']) ?? meanX(piece, ['panel']);
  return inner !== undefined && outer !== undefined && inner > outer;
}
