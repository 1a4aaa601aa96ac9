import {
  add,
  distance,
  movePoint,
  pathJoin,
  pathLength,
  pathPart,
  pathReverse,
  scale,
  throughPoints,
  turn,
  turnAbout,
} from '../../geometry/index.ts';
import type { Path, Point } from '../../geometry/index.ts';
import { lowerArmhole, upperArmhole } from '../armhole.ts';
import { bend, heading } from '../curve.ts';
import { xAtHeight } from '../drawn.ts';
import { solve } from '../solve.ts';

/** What a half front or half back is drafted from; mm and degrees, waist at y = 0, centre at x = 0. */
export interface HalfRules {
  readonly shoulderTip: Point;
  readonly shoulderSlope: number;
  /** Width across, on the closed half; the panel seam starts there. */
  readonly across: number;
  /** Share of the closed armhole's depth, from the tip, at which that width is taken. */
  readonly acrossAt: number;
  /** Point on which the upper part of the side panel is swung to open the dart that the panel seam holds. */
  readonly apex: Point;
  /** The dart's angle in radians. */
  readonly dart: number;
  readonly width: number;
  readonly bustLevel: number;
  readonly underarm: number;
  readonly highHip: number;
  readonly skirtLength: number;
  /** Where the middle of the panel seam runs, and how much it takes out. */
  readonly seamAt: { readonly waist: number; readonly highHip: number };
  readonly seamIntake: { readonly waist: number; readonly highHip: number };
  readonly sideIntake: { readonly waist: number; readonly highHip: number };
  /** How much longer the side panel is along the panel seam, eased in over the bust. */
  readonly ease: number;
  /** Depth of the armhole's scoop below the width line: handle shares, upright and level. */
  readonly scoop: readonly [number, number];
}

/** The lines of a half: every one walked upwards from the hem, or from the underarm towards the shoulder. */
export interface HalfLines {
  readonly centrePanelSeam: Path;
  readonly sidePanelSeam: Path;
  readonly side: Path;
  /** From the underarm to the panel seam, on the side panel as cut. */
  readonly lowerArmhole: Path;
  /** From the panel seam to the shoulder tip, on the centre panel as cut. */
  readonly upperArmhole: Path;
}

/** See `apexHeading`. */
const APEX_TURN = 0.18;
/** Direction in which the seam runs into the armhole. */
const SEAM_HEADING = 38;

/** The part of an upward line below `over` mm under its waist knot (the end of its cubic number `knot`) is cut off. */
function trimBelowWaist(line: Path, knot: number, over: number): Path {
  const toWaist = pathLength(line.slice(0, 3 * knot + 1));
  return pathPart(line, (toWaist - over) / pathLength(line), 1);
}

/** A seam line from hem to `top`, its part below the waist `skirt` long. */
function seamLine(
  rules: HalfRules,
  x: { readonly waist: number; readonly highHip: number },
  top: readonly Point[],
  topHeading: Point,
): Path {
  const waist = { x: x.waist, y: 0 };
  const highHip = { x: x.highHip, y: rules.highHip };
  const below = add(highHip, scale({ x: highHip.x - waist.x, y: highHip.y }, 0.35));
  const line = throughPoints([below, highHip, waist, ...top], { endTangent: topHeading });
  return trimBelowWaist(line, 2, rules.skirtLength);
}

/** The side seam, upright under the arm. */
const sideSeam = (rules: HalfRules, underarm: Point): Path =>
  seamLine(
    rules,
    { waist: rules.width - rules.sideIntake.waist, highHip: rules.width - rules.sideIntake.highHip },
    [underarm],
    heading(90),
  );

/** The underarm point: so far out that the side seam passes the bust level at the half's width. */
function sideTop(rules: HalfRules): Point {
  const at = (out: number): Point => ({ x: rules.width + out, y: rules.underarm });
  return at(solve((out) => xAtHeight(sideSeam(rules, at(out)), rules.bustLevel) - rules.width, 0, 20));
}

/** Where the panel seam meets the armhole, on the centre panel and, swung open, on the side panel; and the armhole's two parts. */
function armholeLines(rules: HalfRules) {
  const underarm = sideTop(rules);
  const closedUnderarm = movePoint(underarm, turnAbout(rules.apex, rules.dart));
  const depth = rules.shoulderTip.y - closedUnderarm.y;
  const onCentre = { x: rules.across, y: rules.shoulderTip.y - rules.acrossAt * depth };
  const onSide = movePoint(onCentre, turnAbout(rules.apex, -rules.dart));
  return {
    underarm,
    onCentre,
    onSide,
    upper: upperArmhole(onCentre, rules.shoulderTip, rules.shoulderSlope),
    lower: lowerArmhole(underarm, onSide, rules.dart, rules.scoop),
  };
}

/** Length of the armhole of a half, panel seam closed. */
export function armholeLength(rules: HalfRules): number {
  const { lower, upper } = armholeLines(rules);
  return pathLength(lower) + pathLength(upper);
}

/** How a panel passes the apex: from the run of its line below towards that of its line above by a share of the turn between them. */
function apexHeading(below: Point, apex: Point, above: Point): Point {
  const angle = (p: Point, q: Point): number => Math.atan2(q.y - p.y, q.x - p.x);
  const low = angle(below, apex);
  return turn({ x: 1, y: 0 }, low + APEX_TURN * (angle(apex, above) - low));
}

/** Drafts the half. Panel seams come out with the side panel `ease` longer than the centre panel to 0.001 mm. */
export function halfLines(rules: HalfRules): HalfLines {
  const { apex, dart } = rules;
  const { underarm, onCentre, onSide, lower, upper } = armholeLines(rules);
  const chord = distance(onCentre, apex);
  /** The panel's line from hem to apex, and from there to the armhole with handles of the given share. */
  const panel = (sign: 1 | -1, end: Point, swing: number) => {
    const x = {
      waist: rules.seamAt.waist + (sign * rules.seamIntake.waist) / 2,
      highHip: rules.seamAt.highHip + (sign * rules.seamIntake.highHip) / 2,
    };
    const pass = apexHeading({ x: x.waist, y: 0 }, apex, end);
    const into = turn(heading(SEAM_HEADING), -swing);
    return {
      below: seamLine(rules, x, [apex], pass),
      above: (reach: number): Path => bend(apex, pass, reach * chord, end, into, reach * chord),
    };
  };
  const centre = panel(-1, onCentre, 0);
  const centrePanelSeam = pathJoin([centre.below, centre.above(0.34)]);
  const side = panel(1, onSide, dart);
  const wanted = pathLength(centrePanelSeam) + rules.ease - pathLength(side.below);
  const reach = solve((r) => pathLength(side.above(r)) - wanted, 0.02, 0.7);
  return {
    centrePanelSeam,
    sidePanelSeam: pathJoin([side.below, side.above(reach)]),
    side: sideSeam(rules, underarm),
    lowerArmhole: lower,
    upperArmhole: upper,
  };
}

/** The half's centre line from neck to hem where it is a seam: straight to the shoulder blades, then shaped to the waist. */
export function centreSeam(
  nape: Point,
  straightTo: number,
  x: { readonly waist: number; readonly highHip: number },
  rules: { readonly highHip: number; readonly skirtLength: number },
): Path {
  const blade = { x: 0, y: straightTo };
  const waist = { x: x.waist, y: 0 };
  const highHip = { x: x.highHip, y: rules.highHip };
  const below = add(highHip, scale({ x: highHip.x - waist.x, y: highHip.y }, 0.35));
  const shaped = throughPoints([below, highHip, waist, blade], { endTangent: heading(90) });
  const upward = pathJoin([
    trimBelowWaist(shaped, 2, rules.skirtLength),
    bend(blade, heading(90), (nape.y - straightTo) / 3, nape, heading(90), (nape.y - straightTo) / 3),
  ]);
  return pathReverse(upward);
}
