import {
  add,
  distance,
  lerp,
  linePath,
  pathEnd,
  pathJoin,
  pathLength,
  scale,
  sub,
  throughPoints,
  turn,
  unit,
} from '../../geometry/index.ts';
import type { Path, Point } from '../../geometry/index.ts';
import { bend, endDirection, heading, round } from '../curve.ts';
import { dartedWaist } from '../darts.ts';
import type { DartedWaist } from '../darts.ts';
import { solve } from '../solve.ts';
import type { TrouserRules } from './rules.ts';

/** The lines of one leg's front or back. */
export interface LegLines {
  /** Upwards, hem to waist. */
  readonly side: Path;
  readonly waist: DartedWaist;
  /** From the waist straight down: the fly in front, the upper seat seam behind. */
  readonly centre: Path;
  /** From there to the fork. */
  readonly crotch: Path;
  /** From the fork down to the hem. */
  readonly inseam: Path;
}

/** The front inside leg is so much longer than the back one, which is stretched on to it below the fork. */
const INSEAM_STRETCH = 4;
/** Where the fly ends, as a share of the way from waist to crotch level. */
const FLY = 0.62;
/** How much the inside leg is hollowed above the knee: share of the turn between its lower and its whole line. */
const HOLLOW = 0.2;

function side(leg: {
  readonly hem: Point;
  readonly knee: Point;
  readonly hip: Point;
  readonly waist: Point;
}): Path {
  const lower = linePath(leg.hem, leg.knee);
  const upper = throughPoints([leg.knee, leg.hip, leg.waist], {
    startTangent: sub(leg.knee, leg.hem),
    endTangent: heading(103),
  });
  return pathJoin([lower, upper]);
}

/** From fork to knee hollowed, then straight to the hem. */
function inseam(fork: Point, knee: Point, hem: Point): Path {
  const below = unit(sub(hem, knee));
  const whole = unit(sub(knee, fork));
  const angle = (p: Point): number => Math.atan2(p.y, p.x);
  const out = turn(whole, HOLLOW * (angle(whole) - angle(below)));
  return pathJoin([round(fork, out, knee, below), linePath(knee, hem)]);
}

/** The crotch curve arrives at the fork square to the inside leg, so that front and back run on smoothly when the leg is closed. */
function crotch(from: Point, out: Point, fork: Point, leg: Path, full: number): Path {
  const down = unit(sub(leg[1]!, leg[0]!));
  return round(from, out, fork, turn(down, -Math.PI / 2), full);
}

/** Waist from the side, square to it, to the centre, square to that. */
function openWaist(sideTop: Point, up: Point, centre: Path): Path {
  const top = centre[0]!;
  const down = unit(sub(centre[1]!, top));
  const third = distance(sideTop, top) / 3;
  return bend(sideTop, turn(up, Math.PI / 2), third, top, turn(down, -Math.PI / 2), third);
}

/** Front and back leg of one size: side seams equal, front inside leg 4 longer, both waists as long as wanted with their darts sewn. */
export function legs(r: TrouserRules): { readonly front: LegLines; readonly back: LegLines } {
  // Both are drawn on their crease: x = 0 there, so that the sizes nest round it.
  const at = (x: number, y: number): Point => ({ x: x - r.frontCrease, y });
  const darts = { serves: 'hip', foldToward: 'second', allowance: 15 } as const;

  const frontFork = at(-r.frontFork, r.crotchLevel);
  const frontSide = side({
    hem: at(r.frontCrease + r.frontHem / 2, r.hemLevel),
    knee: at(r.frontCrease + r.frontKnee / 2, r.kneeLevel),
    hip: at(r.frontHip, r.hipLevel),
    waist: at(r.frontHip - r.sideIntake, r.sideRaise),
  });
  const frontInseam = inseam(
    frontFork,
    at(r.frontCrease - r.frontKnee / 2, r.kneeLevel),
    at(r.frontCrease - r.frontHem / 2, r.hemLevel),
  );
  const centreFront = at(r.centreFront.x, r.centreFront.y);
  const flyEnd = lerp(
    centreFront,
    at(0, r.hipLevel),
    (FLY * r.crotchLevel - centreFront.y) / (r.hipLevel - centreFront.y),
  );
  const fly = linePath(centreFront, flyEnd);
  const front: LegLines = {
    side: frontSide,
    waist: dartedWaist(
      openWaist(pathEnd(frontSide), endDirection(frontSide), fly),
      r.frontWaist,
      [{ id: 'dart', name: 'front dart', at: 0.46, intake: 1, length: 88 }],
      darts,
    ),
    centre: fly,
    crotch: crotch(flyEnd, unit(sub(flyEnd, centreFront)), frontFork, frontInseam, 0.84),
    inseam: frontInseam,
  };

  const on = (x: number, y: number): Point => ({ x: x - r.backCrease, y });
  const seat = on(r.centreBack.x, r.centreBack.y);
  const slant = unit(sub(on(2, r.hipLevel), seat));
  const seatEnd = add(seat, scale(slant, distance(seat, on(2, r.hipLevel)) - 18));
  const backHip = on(r.backHip + 2, r.hipLevel);
  const backSideTo = (raise: number): Path =>
    side({
      hem: on(r.backCrease + r.backHem / 2, r.hemLevel),
      knee: on(r.backCrease + r.backKnee / 2, r.kneeLevel),
      hip: backHip,
      waist: { x: backHip.x - r.sideIntake - 3, y: raise },
    });
  const backSide = backSideTo(solve((y) => pathLength(backSideTo(y)) - pathLength(frontSide), -30, 40));
  const backInseamFrom = (drop: number): Path =>
    inseam(
      on(-r.backFork, r.crotchLevel - drop),
      on(r.backCrease - r.backKnee / 2, r.kneeLevel),
      on(r.backCrease - r.backHem / 2, r.hemLevel),
    );
  const wanted = pathLength(frontInseam) - INSEAM_STRETCH;
  const backInseam = backInseamFrom(solve((drop) => pathLength(backInseamFrom(drop)) - wanted, -10, 60));
  const centreBack = linePath(seat, seatEnd);
  const back: LegLines = {
    side: backSide,
    waist: dartedWaist(
      openWaist(pathEnd(backSide), endDirection(backSide), centreBack),
      r.backWaist,
      [
        { id: 'dart-side', name: 'back dart, side', at: 0.36, intake: 0.46, length: 122 },
        { id: 'dart-centre', name: 'back dart, centre', at: 0.66, intake: 0.54, length: 142 },
      ],
      darts,
    ),
    centre: centreBack,
    crotch: crotch(seatEnd, slant, backInseam[0]!, backInseam, 0.84),
    inseam: backInseam,
  };
  return { front, back };
}
