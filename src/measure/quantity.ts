import { edgesOf, halfOf, leaders, limbsAt, panels, pieceAt, sideOf } from '../garment/index.ts';
import type { BodySide, DrawnPiece, EdgeRole, Garment, Half, Level, PieceId } from '../garment/index.ts';
import { angleBetween, distance, nearestPlace, pathEnd, pathStart, sub } from '../geometry/index.ts';
import type { Point } from '../geometry/index.ts';
import { girthAt, widthAt } from './girth.ts';
import { acrossHalf, crotchWidth, knowsLevel, shoulderDrop, spanLength, wornOn } from './length.ts';
import type { EdgeSpan } from './length.ts';
import { capEase, capHeight } from './sleeve.ts';

/** One thing that can be measured on a garment, as data. Lengths in mm, angles in degrees. */
export type Quantity =
  /** All round (round one limb at a limb's level); of one half, of one side of the body, or of both. */
  | { readonly is: 'girth'; readonly level: Level; readonly half?: Half; readonly side?: BodySide }
  /** Edges of a role on each side of the body. */
  | ({ readonly is: 'length'; readonly side?: BodySide } & EdgeSpan)
  /** How far the shoulder seam falls from neck to tip. */
  | { readonly is: 'shoulder-drop'; readonly half: Half; readonly side?: BodySide }
  /** Centre to armhole at its notch. */
  | { readonly is: 'across'; readonly half: Half; readonly side?: BodySide }
  /** Crotch point to side seam, of one leg piece. */
  | { readonly is: 'crotch-width'; readonly half: Half }
  | { readonly is: 'cap-ease'; readonly side?: BodySide }
  | { readonly is: 'cap-height'; readonly side?: BodySide }
  /** Of one dart: how wide its mouth is, or the angle between its legs. A dart that is not there is shut. */
  | { readonly is: 'dart'; readonly piece: PieceId; readonly dart: string; readonly as: 'mouth' | 'angle' }
  /** All darts of a piece together, the angles between their legs. */
  | { readonly is: 'darts'; readonly piece: PieceId }
  /** Where the bust point lies: how high, or how far from the centre. */
  | { readonly is: 'bust-point'; readonly as: 'up' | 'out' };

/** What kept a quantity from being measured. */
export type Missing =
  | { readonly missing: 'level'; readonly level: Level; readonly piece?: PieceId }
  | { readonly missing: 'edge'; readonly role: EdgeRole; readonly half?: Half }
  | { readonly missing: 'sleeve' | 'bust-point' }
  | { readonly missing: 'piece'; readonly piece: PieceId };

/** The quantity on the left and on the right of the body; the same twice where it has no sides. */
export type Measured = { readonly left: number; readonly right: number };

export const isMissing = (measured: Measured | Missing): measured is Missing => 'missing' in measured;

/** Measures a quantity on both sides of the body, or says what it lacks. The very measures of `check` and of a plan's girths. */
export function measure(garment: Garment, quantity: Quantity): Measured | Missing {
  const side = 'side' in quantity ? quantity.side : undefined;
  const left = measureOn(garment, quantity, side ?? 'left');
  if (typeof left !== 'number') return left;
  if (side || !hasSides(garment)) return { left, right: left };
  const right = measureOn(garment, quantity, 'right');
  return typeof right === 'number' ? { left, right } : right;
}

const hasSides = (garment: Garment): boolean => garment.pieces.some((p) => sideOf(p) !== undefined);

function measureOn(garment: Garment, quantity: Quantity, side: BodySide): number | Missing {
  switch (quantity.is) {
    case 'girth':
      return girth(garment, quantity);
    case 'length':
      return length(garment, quantity, side);
    case 'shoulder-drop':
      return (
        shoulderDrop(garment, quantity.half, side) ?? {
          missing: 'edge',
          role: 'shoulder',
          half: quantity.half,
        }
      );
    case 'across':
      return (
        acrossHalf(garment, quantity.half, side) ?? { missing: 'edge', role: 'armhole', half: quantity.half }
      );
    case 'crotch-width':
      return (
        crotchWidth(garment, quantity.half, side) ?? { missing: 'edge', role: 'inseam', half: quantity.half }
      );
    case 'cap-ease':
      return capEase(garment, side) ?? { missing: 'sleeve' };
    case 'cap-height':
      return capHeight(garment, side) ?? { missing: 'sleeve' };
    case 'dart':
    case 'darts':
      return darts(garment, quantity);
    default:
      return bustPoint(garment, quantity.as, side);
  }
}

/** Pieces whose line of a level counts: those the garment names, else all that lead and have such a line. */
function levelPieces(garment: Garment, level: Level): readonly PieceId[] {
  const named = garment.levels.find((l) => l.level === level)?.pieces ?? [];
  if (named.length > 0) return named;
  return leaders(garment)
    .filter((p) => widthAt(p, level) !== null)
    .map((p) => p.id);
}

function girth(garment: Garment, { level, half, side }: Quantity & { is: 'girth' }): number | Missing {
  const named = garment.levels.some((l) => l.level === level && l.pieces.length > 0);
  if (named && !half && !side) {
    const all = girthAt(garment, level)!;
    return all.missing[0] === undefined ? all.girth : { missing: 'level', level, piece: all.missing[0] };
  }
  let sum = 0;
  let met = 0;
  for (const id of levelPieces(garment, level)) {
    const piece = pieceAt(garment, id);
    if (!piece || (half && halfOf(piece) !== half)) continue;
    const width = widthAt(piece, level);
    if (width === null) return { missing: 'level', level, piece: id };
    met++;
    sum += width * timesOn(piece, side);
  }
  if (met > 0) return sum / (side ? 1 : limbsAt(level));
  return level === 'hem' ? hemGirth(garment, half, side) : { missing: 'level', level };
}

/** How many parts of a piece are worn on a side; all of them when no side is meant. A fold's halves lie one on each. */
function timesOn(piece: DrawnPiece, side: BodySide | undefined): number {
  const fold = piece.edges.some((e) => e.kind === 'fold');
  if (!side) return piece.worn.length * (fold ? 2 : 1);
  if (fold) return piece.worn.length;
  return piece.worn.reduce((sum, w) => sum + (w.side === side ? 1 : w.side === 'both' ? 0.5 : 0), 0);
}

/** A hem without a level line is as wide as its hem edges. */
function hemGirth(garment: Garment, half?: Half, side?: BodySide): number | Missing {
  const one = (s: BodySide): number | undefined =>
    spanLength(garment, { role: 'hem', as: 'along', ...(half ? { half } : {}) }, s);
  const [left, right] = [one(side ?? 'left'), one(side ?? 'right')];
  if (left === undefined || right === undefined)
    return { missing: 'edge', role: 'hem', ...(half ? { half } : {}) };
  return side ? left : left + right;
}

function length(garment: Garment, q: Quantity & { is: 'length' }, side: BodySide): number | Missing {
  for (const level of [q.above, q.below])
    if (level !== undefined && !knowsLevel(garment, q, level, side)) return { missing: 'level', level };
  return (
    spanLength(garment, q, side) ?? { missing: 'edge', role: q.role, ...(q.half ? { half: q.half } : {}) }
  );
}

interface Legs {
  readonly a: Point;
  readonly point: Point;
  readonly b: Point;
}

/** Mouth, point and mouth of every dart of a piece. */
function legsOf(piece: DrawnPiece): ReadonlyMap<string, Legs> {
  const path = (id: string) => piece.edges.find((e) => e.id === id)?.path;
  return new Map(
    piece.darts.flatMap((d) => {
      const [one, two] = [path(d.legs[0]), path(d.legs[1])];
      return one && two ? [[d.id, { a: pathStart(one), point: pathEnd(one), b: pathEnd(two) }] as const] : [];
    }),
  );
}

const DEGREES = 180 / Math.PI;
const angleOf = ({ a, point, b }: Legs): number =>
  Math.abs(angleBetween(sub(a, point), sub(b, point))) * DEGREES;

function darts(garment: Garment, q: Quantity & { is: 'dart' | 'darts' }): number | Missing {
  const piece = pieceAt(garment, q.piece);
  if (!piece) return { missing: 'piece', piece: q.piece };
  const legs = legsOf(piece);
  if (q.is === 'darts') return [...legs.values()].reduce((sum, dart) => sum + angleOf(dart), 0);
  const dart = legs.get(q.dart);
  if (!dart) return 0;
  return q.as === 'mouth' ? distance(dart.a, dart.b) : angleOf(dart);
}

function bustPoint(garment: Garment, as: 'up' | 'out', side: BodySide): number | Missing {
  const piece = panels(garment, 'front').find(
    (p) => wornOn(p, side) && p.marks.some((m) => m.kind === 'bust-point'),
  );
  const at = piece?.marks.find((m) => m.kind === 'bust-point')?.at;
  if (!piece || !at) return { missing: 'bust-point' };
  if (as === 'up') return at.y;
  const centre = edgesOf(piece, 'centre')[0];
  if (!centre) return { missing: 'edge', role: 'centre', half: 'front' };
  return distance(at, { x: nearestPlace(centre.path, at).point.x, y: at.y });
}
