import { alterFinding } from '../words/words-table.ts';
import {
  SEAM_NOTE_MM,
  angleBetween,
  pathEnd,
  pathLength,
  pathStart,
  perp,
  scale,
  sub,
  unit,
} from '../../geometry/index.ts';
import type { Point } from '../../geometry/index.ts';
import { chainLength, sideOf, type Finding, halfOf, hasRole, leaders, pieceAt } from '../../garment/index.ts';
import type { DrawnPiece, EdgeRef, Garment, Seam, Half } from '../../garment/index.ts';
import { lengthThen } from './length-then.ts';
import { draw, tell } from './change.ts';
import type { Change } from './change.ts';
import { partSides } from './part-sides.ts';
import { pullEdges } from '../move/pull.ts';
import { isSleeve } from '../role/roles.ts';

/** A cap half is fitted to this; a tenth of what a walked seam notices. */
const FIT_MM = 0.05;
/** Both halves changed alike within this: the armhole grew or shrank in depth, and the cap's height follows. Else its width does, on the half that changed. */
const ALIKE_MM = 2;

/** An armhole seam with the sleeve set into it. */
export interface Cap {
  readonly seam: Seam;
  readonly sleeve: string;
  readonly front: readonly EdgeRef[];
  readonly back: readonly EdgeRef[];
  readonly armhole: readonly EdgeRef[];
}

const capHalf = (piece: DrawnPiece, ref: EdgeRef): Half | undefined =>
  piece.edges.find((e) => e.id === ref.edge)?.half;

/** Every armhole seam of the garment with its sleeve, lining sleeves left out: they follow their shell. */
export function capsOf(garment: Garment): Cap[] {
  const sleeves = new Map(
    leaders(garment)
      .filter(isSleeve)
      .map((p) => [p.id, p]),
  );
  return garment.seams.flatMap((seam) => {
    const cap = [seam.a, seam.b].find((chain) => chain.every((r) => isCap(sleeves.get(r.piece), r)));
    const sleeve = cap?.[0] && sleeves.get(cap[0].piece);
    if (!cap || !sleeve) return [];
    const of = (half: Half): EdgeRef[] => cap.filter((r) => capHalf(sleeve, r) === half);
    return [
      {
        seam,
        sleeve: sleeve.id,
        front: of('front'),
        back: of('back'),
        armhole: cap === seam.a ? seam.b : seam.a,
      },
    ];
  });
}

/** The caps, each sleeve once (after left and right were parted one sleeve meets two armholes). */
export function eachCap(garment: Garment): Cap[] {
  const seen = new Set<string>();
  return capsOf(garment).filter((cap) => !seen.has(cap.sleeve) && seen.add(cap.sleeve));
}

function isCap(piece: DrawnPiece | undefined, ref: EdgeRef): boolean {
  const edge = piece?.edges.find((e) => e.id === ref.edge);
  return edge !== undefined && hasRole(edge, 'cap');
}

/** Cap seam minus armhole seam, mm. */
export const capEaseOf = (garment: Garment, cap: Cap): number =>
  chainLength(garment, [...cap.front, ...cap.back]) - chainLength(garment, cap.armhole);

const armholeOf = (garment: Garment, cap: Cap, half: Half): EdgeRef[] =>
  cap.armhole.filter((r) => {
    const piece = pieceAt(garment, r.piece);
    return piece !== undefined && halfOf(piece) === half;
  });

/** The corner where the two cap halves meet, as the edge that starts there; undefined when the cap is one edge. */
export function crown(piece: DrawnPiece): string | undefined {
  const i = piece.edges.findIndex(
    (e, k) =>
      hasRole(e, 'cap') && hasRole(piece.edges[(k + piece.edges.length - 1) % piece.edges.length]!, 'cap'),
  );
  return piece.edges[i]?.id;
}

/**
 * The sleeve with a cap half's underarm corner moved outwards by `mm`: square to the underarm seam, then along it by as much as keeps that seam's length,
 * so that front and back still match.
 */
export function widenAt(piece: DrawnPiece, capEdge: string, mm: number): DrawnPiece {
  const n = piece.edges.length;
  const i = piece.edges.findIndex((e) => e.id === capEdge);
  const atStart = !hasRole(piece.edges[(i + n - 1) % n]!, 'cap');
  const k = atStart ? (i + n - 1) % n : (i + 1) % n;
  const seam = piece.edges[k]!.path;
  const last = seam.length - 1;
  const along = unit(atStart ? sub(pathEnd(seam), seam[last - 1]!) : sub(seam[1]!, pathStart(seam)));
  // Outlines run counter-clockwise: outwards is to the right of the underarm seam's direction.
  const out = scale(perp(along), -mm);
  const at = atStart ? 0 : 1;
  const first = pullEdges(piece, [{ edge: capEdge, at, by: out }]);
  const grown = pathLength(first.edges[k]!.path) - pathLength(seam);
  const back = scale(along, atStart ? -grown : grown);
  return pullEdges(piece, [{ edge: capEdge, at, by: { x: out.x + back.x, y: out.y + back.y } }]);
}

/** Secant on a length that grows with x; gives the x at which it is `wanted`, or undefined when it does not settle. */
export function solveLength(
  lengthFor: (x: number) => number,
  wanted: number,
  first: number,
): number | undefined {
  let x0 = 0;
  let f0 = lengthFor(0) - wanted;
  let x1 = first;
  for (let round = 0; round < 20; round++) {
    const f1 = lengthFor(x1) - wanted;
    if (Math.abs(f1) < FIT_MM / 10) return x1;
    if (f1 === f0) return undefined;
    const next = x1 - (f1 * (x1 - x0)) / (f1 - f0);
    [x0, f0, x1] = [x1, f1, next];
  }
  return undefined;
}

const edgeLengthOf = (piece: DrawnPiece, refs: readonly EdgeRef[]): number =>
  refs.reduce((sum, r) => sum + pathLength(piece.edges.find((e) => e.id === r.edge)?.path ?? []), 0);

/** Two directions nearer than this run on into one another: the top of a cap, not a corner. */
const SMOOTH_RAD = 0.2;

/** The sleeve with its crown raised by `mm` (a one-edge cap has none and stays). */
export const raiseCrown = (piece: DrawnPiece, mm: number): DrawnPiece => moveCrown(piece, { x: 0, y: mm });

/** The sleeve with its crown drawn elsewhere. A rounded crown stays rounded. */
function moveCrown(piece: DrawnPiece, by: Point): DrawnPiece {
  const edge = crown(piece);
  if (edge === undefined) return piece;
  const n = piece.edges.length;
  const i = piece.edges.findIndex((e) => e.id === edge);
  const into = piece.edges[(i + n - 1) % n]!.path;
  const from = piece.edges[i]!.path;
  const turn = angleBetween(sub(pathEnd(into), into[into.length - 2]!), sub(from[1]!, from[0]!));
  return pullEdges(piece, [{ edge, at: 0, by, smooth: Math.abs(turn) < SMOOTH_RAD }]);
}

/** A step of this size tells how the halves' lengths change with the crown, mm. */
const PROBE_MM = 0.5;

/** The sleeve with both halves of its cap brought to a length by its crown alone, so that it stays as wide round the arm; undefined where that does not settle. */
function byCrown(
  piece: DrawnPiece,
  cap: Cap,
  target: { front: number; back: number },
): DrawnPiece | undefined {
  if (!crown(piece)) return undefined;
  const off = (by: Point): { front: number; back: number } => {
    const moved = moveCrown(piece, by);
    return {
      front: target.front - edgeLengthOf(moved, cap.front),
      back: target.back - edgeLengthOf(moved, cap.back),
    };
  };
  let by: Point = { x: 0, y: 0 };
  for (let round = 0; round < 12; round++) {
    const here = off(by);
    if (Math.max(Math.abs(here.front), Math.abs(here.back)) < FIT_MM / 10) return moveCrown(piece, by);
    const [aside, up] = [off({ x: by.x + PROBE_MM, y: by.y }), off({ x: by.x, y: by.y + PROBE_MM })];
    const x = { front: here.front - aside.front, back: here.back - aside.back };
    const y = { front: here.front - up.front, back: here.back - up.back };
    const whole = x.front * y.back - x.back * y.front;
    if (Math.abs(whole) < 1e-9) return undefined;
    by = {
      x: by.x + (PROBE_MM * (here.front * y.back - here.back * y.front)) / whole,
      y: by.y + (PROBE_MM * (x.front * here.back - x.back * here.front)) / whole,
    };
  }
  return undefined;
}

/** The sleeve with a cap half longer by `by`, at its underarm corner. */
function widenHalf(piece: DrawnPiece, refs: readonly EdgeRef[], by: number): DrawnPiece | undefined {
  const ends = refs.filter((r) => {
    const n = piece.edges.length;
    const i = piece.edges.findIndex((e) => e.id === r.edge);
    return !hasRole(piece.edges[(i + n - 1) % n]!, 'cap') || !hasRole(piece.edges[(i + 1) % n]!, 'cap');
  });
  const edge = ends[0]?.edge;
  if (!edge) return undefined;
  const wanted = edgeLengthOf(piece, refs) + by;
  const widened = (x: number): DrawnPiece => widenAt(piece, edge, x);
  const x = solveLength((mm) => edgeLengthOf(widened(mm), refs), wanted, by);
  return x === undefined ? undefined : widened(x);
}

interface Need {
  readonly cap: Cap;
  /** What each half of the armhole gained. */
  readonly grown: Record<Half, number>;
  /** What the cap's halves still lack. */
  readonly need: Record<Half, number>;
}

function needsOf(change: Change): Need[] {
  const { before, garment } = change;
  return capsOf(garment).map((cap) => {
    const of = (half: Half): number =>
      chainLength(garment, armholeOf(garment, cap, half)) - lengthThen(before, armholeOf(before, cap, half));
    const own = (half: Half): number => chainLength(garment, cap[half]) - lengthThen(before, cap[half]);
    const grown = { front: of('front'), back: of('back') };
    return { cap, grown, need: { front: grown.front - own('front'), back: grown.back - own('back') } };
  });
}

/**
 * After left and right were parted one sleeve may meet two armholes. Where those now want different caps it is parted as well, so that each side gets its own.
 */
function partSleeves(change: Change): void {
  const needs = needsOf(change);
  const parted = new Map<string, string>();
  for (const { cap, need } of needs) {
    const other = needs.find((n) => n.cap.sleeve === cap.sleeve && n.cap !== cap);
    const off = (half: Half): number => Math.abs(need[half] - (other?.need[half] ?? need[half]));
    if (!parted.has(cap.sleeve) && Math.max(off('front'), off('back')) > SEAM_NOTE_MM) {
      parted.set(cap.sleeve, cap.seam.id);
    }
  }
  partSides(change, [...parted.keys()]);
  for (const [sleeve, seam] of parted) {
    const left = change.garment.pieces.find((p) => p.of === sleeve && sideOf(p) === 'left');
    tell(change, alterFinding('sleeve-parted', 'note', { piece: left?.id ?? sleeve, seam }, {}));
  }
}

/**
 * Gives each half of the cap what its half of the armhole gained or lost, so that the ease stays as it was meant (trade.md 5.12, armhole/sleeve walk rule).
 * A sleeve whose cap could not be brought to it is a finding.
 */
export function capsFollow(change: Change): void {
  partSleeves(change);
  for (const { id } of leaders(change.garment).filter(isSleeve)) {
    // What one armhole asked for, the other of an unparted sleeve has as well: within half a millimetre.
    const found = needsOf(change).find((n) => n.cap.sleeve === id);
    if (!found) continue;
    const { cap, grown, need } = found;
    if (Math.abs(need.front) < FIT_MM && Math.abs(need.back) < FIT_MM) continue;
    if (cap.front.length === 0 || cap.back.length === 0) {
      tell(change, unreached(cap, need.front + need.back, false));
      continue;
    }
    tell(
      change,
      fit(change, cap, need) ? followed(cap, grown) : unreached(cap, need.front + need.back, true),
    );
  }
}

function fit(change: Change, cap: Cap, need: { front: number; back: number }): boolean {
  let done = true;
  draw(change, cap.sleeve, (sleeve) => {
    let piece = sleeve;
    const target = {
      front: edgeLengthOf(piece, cap.front) + need.front,
      back: edgeLengthOf(piece, cap.back) + need.back,
    };
    const kept = change.armKept ? byCrown(piece, cap, target) : undefined;
    if (kept) return kept;
    if (Math.abs(need.front - need.back) < ALIKE_MM && crown(piece)) {
      const whole = target.front + target.back;
      const both = (p: DrawnPiece): number => edgeLengthOf(p, cap.front) + edgeLengthOf(p, cap.back);
      const up = solveLength((mm) => both(raiseCrown(piece, mm)), whole, need.front);
      if (up !== undefined) piece = raiseCrown(piece, up);
    }
    for (const half of ['front', 'back'] as const) {
      const by = target[half] - edgeLengthOf(piece, cap[half]);
      if (Math.abs(by) < FIT_MM) continue;
      const wider = widenHalf(piece, cap[half], by);
      if (wider) piece = wider;
      else done = false;
    }
    return done ? piece : sleeve;
  });
  return done;
}

const followed = (cap: Cap, by: { front: number; back: number }) =>
  alterFinding(
    'cap-follows',
    'note',
    { piece: cap.sleeve, seam: cap.seam.id },
    { front: by.front, back: by.back },
    { amount: by.front + by.back },
  );

const unreached = (cap: Cap, by: number, halves: boolean): Finding =>
  alterFinding(
    'cap-not-reached',
    'warning',
    { piece: cap.sleeve, seam: cap.seam.id },
    { by, halves },
    { amount: by },
  );
