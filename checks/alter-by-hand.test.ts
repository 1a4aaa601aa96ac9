import { describe, expect, it } from 'vitest';
import {
  applyStep,
  CATALOGUE,
  dartIntake,
  dartOf,
  openingAngle,
  openingAt,
  SCHEMATIC,
} from '../src/alter/index.ts';
import type { Alteration } from '../src/alter/index.ts';
import type { DrawnPiece, Edge, Garment, ParamValue } from '../src/garment/index.ts';
import { distance, nearestPlace, pathAt, pathEnd, pathLength, pathStart } from '../src/geometry/index.ts';

/*
 * One amount per catalogue entry, worked by hand on the plain garments (src/alter/drawn/schematic.ts: straight lines, round numbers, mm).
 * The working stands beside each. Source of the rules: docs/trade.md section 5; the arithmetic is derived.
 */
const { bodice, plain, panels, skirt, trousers } = SCHEMATIC;
const find = (g: Garment, id: string): DrawnPiece => g.pieces.find((p) => p.id === id)!;
const edge = (g: Garment, id: string, e: string): Edge<'one'> => find(g, id).edges.find((x) => x.id === e)!;
const len = (g: Garment, id: string, e: string): number => pathLength(edge(g, id, e).path);
const tested = new Set<string>();
const alter = (g: Garment, entry: string, params: Record<string, ParamValue>) => {
  tested.add(entry);
  const out = applyStep(g, { id: 's', kind: 'alter', entry, params });
  expect(out.findings.filter((f) => f.severity === 'error')).toEqual([]);
  return { g: out.garment, out, grew: (id: string, e: string) => len(out.garment, id, e) - len(g, id, e) };
};

describe('length', () => {
  it('above the waist: 20 at the back, 8 in front and at the side', () => {
    const { grew } = alter(bodice, 'length-above-waist', { back: -20, front: -8, side: -8 });
    // Upright centres take the whole amount. The side seam of front (lower part, leaning 4 in 100) and back (6 in 160.1) both lose 8 in height:
    // front √(4² + 92²) − √(4² + 100²) = −7.993; the back's fold tapers from 20 to 8, so its side takes 8 as well.
    expect(grew('back', 'centre')).toBeWithinMm(-20, 0.05);
    expect(grew('front', 'centre')).toBeWithinMm(-8, 1e-6);
    expect(grew('front', 'side-low')).toBeWithinMm(Math.hypot(4, 92) - Math.hypot(4, 100), 1e-6);
    // The wedge of 12 over 224 also turns the side a little: by 12/224 rad, hence the tenth.
    expect(grew('back', 'side')).toBeWithinMm(-8, 0.3);
  });

  it('below the waist: 30 all round', () => {
    const { grew } = alter(panels, 'length-below-waist', { amount: 30 });
    expect(grew('front-centre', 'centre')).toBeWithinMm(30, 1e-6);
    expect(grew('back', 'centre')).toBeWithinMm(30, 1e-6);
    // The back's side leans 5 in 360, half of it below the waist: √(2.5² + 210²) − √(2.5² + 180²) = 29.998.
    expect(grew('back', 'side')).toBeWithinMm(Math.hypot(2.5, 210) - Math.hypot(2.5, 180), 0.001);
  });

  it('skirt: 50 between hip and hem, and 50 at the hem', () => {
    const line = alter(skirt, 'skirt-length', { amount: 50, where: 'line' });
    expect(line.grew('front', 'centre')).toBeWithinMm(50, 1e-6);
    expect(line.grew('front', 'hem')).toBeWithinMm(0, 1e-6);
    // At the hem the side runs on in its direction (60 in 600): 50 along it, 50 × 60/603 = 4.98 wider.
    const hem = alter(skirt, 'skirt-length', { amount: 50, where: 'hem' });
    expect(hem.grew('front', 'side')).toBeWithinMm(50, 1e-6);
    expect(hem.g.pieces[0]!.edges[0]!.path.at(-1)!.x - 260).toBeWithinMm(
      (50 * 60) / Math.hypot(60, 600),
      1e-6,
    );
  });

  it('sleeve: 12 above and 18 below the elbow; the elbow goes down by 12', () => {
    const { g } = alter(bodice, 'sleeve-length', { above: 12, below: 18 });
    const low = pathStart(edge(g, 'sleeve', 'hem').path).y;
    expect(low).toBeWithinMm(-430 - 30, 1e-6);
    const elbow = find(g, 'sleeve').lines.find((l) => l.level === 'elbow')!;
    expect(pathStart(elbow.path).y).toBeWithinMm(-215 - 12, 0.01);
  });

  it('across the chest: 10 longer; centre and shoulder go up by 10, underarm stays', () => {
    const { g, grew } = alter(bodice, 'chest-length', { amount: 10 });
    expect(grew('front', 'centre')).toBeWithinMm(10, 1e-6);
    expect(pathStart(edge(g, 'front', 'shoulder').path).y).toBeWithinMm(370, 1e-6);
    expect(pathStart(edge(g, 'front', 'armhole').path)).toEqual(
      pathStart(edge(bodice, 'front', 'armhole').path),
    );
    // What the armhole gained, each half of the cap gained.
    expect(grew('sleeve', 'cap-front')).toBeWithinMm(grew('front', 'armhole'), 0.1);
    expect(grew('sleeve', 'cap-back')).toBeWithinMm(grew('back', 'armhole'), 0.1);
  });
});

describe('shoulder', () => {
  it('forward 10: armholes −10 and +10, cap the other way round', () => {
    const { grew } = alter(bodice, 'forward-shoulder', { tip: 10, neck: 0 });
    expect(grew('front', 'armhole')).toBeWithinMm(-10, 0.01);
    expect(grew('back', 'armhole')).toBeWithinMm(10, 0.01);
    expect(grew('sleeve', 'cap-front')).toBeWithinMm(-10, 0.01);
    expect(grew('sleeve', 'cap-back')).toBeWithinMm(10, 0.01);
  });

  it('forward 6 at the neck too: necklines −6 and +6', () => {
    const { grew } = alter(bodice, 'forward-shoulder', { tip: 10, neck: 6 });
    expect(grew('front', 'neck')).toBeWithinMm(-6, 0.01);
    expect(grew('back', 'neck')).toBeWithinMm(6, 0.01);
  });

  it('sloping by 9: tip and underarm 9 lower, armhole kept, side 9 shorter', () => {
    const { g, grew } = alter(bodice, 'shoulder-slope', { amount: -9 });
    expect(pathStart(edge(g, 'front', 'shoulder').path)).toEqual({ x: 190, y: 351 });
    expect(grew('front', 'armhole')).toBeWithinMm(0, 1e-9);
    // side-up runs from (234, 130) to (238, 190): now to (238, 181).
    expect(len(g, 'front', 'side-up')).toBeWithinMm(Math.hypot(4, 51), 1e-6);
    expect(grew('sleeve', 'cap-front')).toBeWithinMm(0, 1e-9);
  });

  it('shorter by 8: shoulder −8 on both, crown +8', () => {
    const { g, grew } = alter(bodice, 'shoulder-length', { amount: -8 });
    expect(grew('front', 'shoulder')).toBeWithinMm(-8, 1e-6);
    expect(grew('back', 'shoulder')).toBeWithinMm(-8, 1e-6);
    expect(pathStart(edge(g, 'sleeve', 'cap-front').path).y).toBeWithinMm(148, 1e-9);
  });

  it('left one lower by 10: left pieces alone, tip 10 lower', () => {
    const { g } = alter(bodice, 'low-shoulder', { side: 'left', amount: 10 });
    // The front is drawn for the left, the back for the right, so the left back is turned over.
    expect(pathStart(edge(g, 'front-left', 'shoulder').path)).toEqual({ x: 190, y: 350 });
    expect(pathEnd(edge(g, 'front-right', 'shoulder').path)).toEqual({ x: -190, y: 360 });
    expect(pathEnd(edge(g, 'back-left', 'shoulder').path)).toEqual({ x: -196, y: 345 });
    expect(pathStart(edge(g, 'back-right', 'shoulder').path)).toEqual({ x: 196, y: 355 });
  });
});

describe('neckline and armhole', () => {
  it('neckline gap of 9: the side dart opens by 9 × 110.0 / (distance from the fold to its point)', () => {
    const { g } = alter(bodice, 'neckline-gap', { gap: 9, half: 'front' });
    // Side dart from (125, 115), legs √(109² + 15²) = 110.03 long. Neckline's middle by length, at r from the point.
    const neck = pathAt(edge(bodice, 'front', 'neck').path, 0.5);
    const r = Math.hypot(neck.x - 125, neck.y - 115);
    const angle = dartOf(find(bodice, 'front'), 'side-dart').angle + openingAngle(9, r);
    const now = dartOf(find(g, 'front'), 'side-dart');
    expect(now.angle).toBeCloseTo(angle, 9);
    expect(dartIntake(now)).toBeWithinMm(openingAt(angle, Math.hypot(109, 15)), 1e-6);
  });

  it('neckline 12 lower in front, 5 wider at the shoulder', () => {
    const { g, grew } = alter(bodice, 'neck-depth', { front: 12, side: 5 });
    expect(grew('front', 'centre')).toBeWithinMm(-12, 1e-9);
    expect(grew('front', 'shoulder')).toBeWithinMm(-5, 1e-6);
    expect(grew('back', 'shoulder')).toBeWithinMm(-5, 1e-6);
    expect(pathStart(edge(g, 'front', 'centre').path)).toEqual({ x: 0, y: 318 });
    expect(edge(g, 'front-facing', 'neck').path).toEqual(edge(g, 'front', 'neck').path);
  });

  it('armhole gap of 8: folded into the side dart by the same angle; the front cap half follows', () => {
    const { g, grew } = alter(bodice, 'armhole-gap', { gap: 8, half: 'front' });
    const mouth = pathAt(edge(bodice, 'front', 'armhole').path, 0.5);
    const r = Math.hypot(mouth.x - 125, mouth.y - 115);
    const opened =
      dartOf(find(g, 'front'), 'side-dart').angle - dartOf(find(bodice, 'front'), 'side-dart').angle;
    expect(opened).toBeCloseTo(openingAngle(8, r), 9);
    expect(grew('sleeve', 'cap-front')).toBeWithinMm(grew('front', 'armhole'), 0.1);
  });

  it('armhole 10 deeper: sides and sleeve underarm 10 shorter, cap as the armhole', () => {
    const { grew } = alter(bodice, 'armhole-depth', { amount: 10 });
    expect(grew('front', 'side-up')).toBeWithinMm(-10, 1e-6);
    expect(grew('back', 'side')).toBeWithinMm(-10, 1e-6);
    expect(grew('sleeve', 'cap-front')).toBeWithinMm(grew('front', 'armhole'), 0.1);
    expect(grew('sleeve', 'underarm-back')).toBeWithinMm(-10, 0.3);
  });
});

describe('bust', () => {
  // Bust point (100, 115); the hinge is the armhole notch at half its length.
  const hinge = pathAt(edge(bodice, 'front', 'armhole').path, 0.5);
  const r = Math.hypot(hinge.x - 100, hinge.y - 115);
  const turn = (width: number): { angle: number; drop: number } => {
    // cos of the new direction of (bust − hinge) is (dx + width) / r; the point comes down by the difference in height.
    const from = Math.atan2(115 - hinge.y, 100 - hinge.x);
    const to = -Math.acos((100 - hinge.x + width) / r);
    return { angle: to - from, drop: 115 - hinge.y - r * Math.sin(to) };
  };

  it('side dart, 12 on each half: waist dart 12 wider, centre longer by the drop, armhole and side kept', () => {
    const { g, grew } = alter(bodice, 'bust-side-dart', { width: 12 });
    const { angle, drop } = turn(12);
    expect(grew('front', 'centre')).toBeWithinMm(drop, 1e-6);
    expect(grew('front', 'armhole')).toBeWithinMm(0, 1e-6);
    expect(grew('front', 'side-low')).toBeWithinMm(0, 1e-9);
    expect(grew('front', 'side-up')).toBeWithinMm(0, 1e-9);
    expect(dartIntake(dartOf(find(g, 'front'), 'waist-dart'))).toBeWithinMm(20 + 12, 1e-6);
    // The upper leg's mouth turns by the angle about the hinge, the lower one goes 12 out and the drop down.
    const up = {
      x: hinge.x + (234 - hinge.x) * Math.cos(angle) - (130 - hinge.y) * Math.sin(angle),
      y: hinge.y + (234 - hinge.x) * Math.sin(angle) + (130 - hinge.y) * Math.cos(angle),
    };
    const low = { x: 234 + 12, y: 100 - drop };
    expect(dartIntake(dartOf(find(g, 'front'), 'side-dart'))).toBeWithinMm(distance(up, low), 1e-6);
  });

  it('no dart, 12 on each half: a side dart as wide as the turn opens it; waist 12 longer', () => {
    const { g, grew } = alter(plain, 'bust-no-dart', { width: 12 });
    const front = find(g, 'front');
    expect(front.darts.map((d) => d.id)).toEqual(['side-dart']);
    expect(grew('front', 'waist')).toBeWithinMm(12, 0.01);
    expect(len(g, 'front', 'side') + len(g, 'front', 'side-2')).toBeWithinMm(
      len(plain, 'front', 'side'),
      1e-6,
    );
    expect(g.seams.find((s) => s.id === 'side')!.a.map((x) => x.edge)).toEqual(['side', 'side-2']);
    expect(g.seams.filter((s) => s.a[0]!.edge === 'side-dart-a')).toHaveLength(1);
  });

  it('waist dart, 10 on each half: the whole side section turns; its dart takes the opening at the waist', () => {
    const { g, grew } = alter(bodice, 'bust-waist-dart', { width: 10 });
    const { angle, drop } = turn(10);
    expect(grew('front', 'centre')).toBeWithinMm(drop, 1e-6);
    // The mouth (110, 0) turns about the hinge; the other (90, 0) comes straight down.
    const b = {
      x: hinge.x + (110 - hinge.x) * Math.cos(angle) - (0 - hinge.y) * Math.sin(angle),
      y: hinge.y + (110 - hinge.x) * Math.sin(angle) + (0 - hinge.y) * Math.cos(angle),
    };
    expect(dartIntake(dartOf(find(g, 'front'), 'waist-dart'))).toBeWithinMm(
      distance(b, { x: 90, y: -drop }),
      1e-6,
    );
    expect(grew('front', 'side-up')).toBeWithinMm(0, 1e-9);
  });

  it('panel seams, 14 on each half and 10 longer: 7 on each panel edge at the bust, 10 on the centre', () => {
    const { g, grew } = alter(panels, 'bust-panel', { width: 14, length: 10 });
    expect(grew('front-centre', 'centre')).toBeWithinMm(10, 1e-6);
    const p = edge(g, 'front-centre', 'panel');
    const bust = pathAt(p.path, p.crossings.find((c) => c.level === 'bust')!.at);
    // The seam runs from (110, −180) to (160, 270): at the bust, height 115, x = 142.78.
    expect(bust.x).toBeWithinMm(142.78 + 7, 0.6);
    expect(grew('front-side', 'side')).toBeWithinMm(0, 0.01);
    expect(grew('front-side', 'panel')).toBeWithinMm(grew('front-centre', 'panel'), 0.1);
  });

  it('bust point on panel seams 12 lower and 5 out: both edges of the seam pass there, running out at waist and armhole', () => {
    const { g } = alter(panels, 'bust-point', { up: -12, out: 5 });
    expect(find(g, 'front-centre').marks[0]!.at).toEqual({ x: 135, y: 103 });
    // Crossing before: 295/450 up from (110, −180) towards (160, 270) on the centre panel, 155/450 down from (175, 270) towards (125, −180) on the
    // side one; both edges then run through that point moved by (5, −12).
    for (const [id, x] of [
      ['front-centre', 110 + (50 * 295) / 450],
      ['front-side', 175 - (50 * 155) / 450],
    ] as const) {
      const { path, crossings } = edge(g, id, 'panel');
      const to = { x: x + 5, y: 115 - 12 };
      expect(distance(nearestPlace(path, to).point, to)).toBeLessThan(0.01);
      expect(crossings.find((c) => c.level === 'waist')).toBeDefined();
      const waist = pathAt(path, crossings.find((c) => c.level === 'waist')!.at);
      expect(waist).toEqual({
        x: expect.closeTo(id === 'front-centre' ? 130 : 145, 1) as number,
        y: expect.closeTo(0, 1) as number,
      });
    }
    expect(pathLength(edge(g, 'front-side', 'panel').path)).toBeWithinMm(
      pathLength(edge(g, 'front-centre', 'panel').path),
      0.1,
    );
  });

  it('bust point 15 lower and 6 out: dart points and the side dart go with it', () => {
    const { g } = alter(bodice, 'bust-point', { up: -15, out: 6 });
    const front = find(g, 'front');
    expect(front.marks[0]!.at).toEqual({ x: 106, y: 100 });
    const side = dartOf(front, 'side-dart');
    expect(side.point).toEqual({ x: 131, y: 100 });
    expect(side.a.y).toBeWithinMm(85, 1e-9);
    expect(side.b.y).toBeWithinMm(115, 1e-9);
    expect(dartOf(front, 'waist-dart').a).toEqual({ x: 96, y: 0 });
    expect(find(g, 'front-lining').marks[0]!.at).toEqual({ x: 106, y: 100 });
  });
});

describe('back', () => {
  it('8 broader on each half: side, armhole and shoulder tip 8 out, dart 8 wider, shoulder eased by what it gained', () => {
    const { g, grew } = alter(bodice, 'back-width', { amount: 8 });
    expect(pathStart(edge(g, 'back', 'shoulder').path)).toEqual({ x: 204, y: 355 });
    expect(pathStart(edge(g, 'back', 'armhole').path).x).toBeWithinMm(236, 1e-9);
    expect(grew('back', 'armhole')).toBeWithinMm(0, 1e-9);
    expect(dartIntake(dartOf(find(g, 'back'), 'waist-dart'))).toBeWithinMm(24 + 8, 1e-6);
    // Shoulder from (196, 355) to (72, 392), 8 more across: √(132² + 37²) − √(124² + 37²).
    expect(grew('back', 'shoulder')).toBeWithinMm(Math.hypot(132, 37) - Math.hypot(124, 37), 1e-6);
    const join = g.seams.find((s) => s.id === 'shoulder')!.join;
    expect(join).toEqual({ kind: 'eased', least: 8, most: 20 });
  });

  it('round: 10 at the centre; on the fold the neckline gains what the turn leaned it in', () => {
    const { g, grew } = alter(bodice, 'round-back', { amount: 10, excess: 'ease' });
    // The slash lies midway down the armhole between underarm (160.1) and tip (355): 257.55, and is as wide as the piece there.
    const slash = (160.1008 + 355) / 2;
    expect(grew('back', 'armhole')).toBeWithinMm(0, 0.01);
    const fold = edge(g, 'back', 'centre').path;
    expect(pathStart(fold).x).toBeWithinMm(0, 1e-9);
    expect(pathEnd(fold).x).toBeWithinMm(0, 1e-9);
    // Height of the raised neck: it turned about the hinge on the armhole by 2 asin(10 / 2w); w is that hinge's distance from the fold.
    const w = hingeWidth(slash);
    const a = openingAngle(10, w);
    expect(pathStart(fold).y).toBeWithinMm(slash + w * Math.sin(a) + (372 - slash) * Math.cos(a), 0.01);
    expect(grew('back', 'neck')).toBeGreaterThan((372 - slash) * Math.sin(a) - 2);
  });

  it('erect: the same folded out', () => {
    const { g, grew } = alter(bodice, 'erect-back', { amount: 10 });
    const slash = (160.1008 + 355) / 2;
    const w = hingeWidth(slash);
    const a = openingAngle(10, w);
    expect(grew('back', 'armhole')).toBeWithinMm(0, 0.01);
    expect(pathStart(edge(g, 'back', 'centre').path).y).toBeWithinMm(
      slash - w * Math.sin(a) + (372 - slash) * Math.cos(a),
      0.01,
    );
  });

  it('swayback 12: centre 12 shorter at the fold, side seam kept', () => {
    const { g, grew } = alter(panels, 'swayback', { amount: 12, centre: 'shaped' });
    expect(grew('back', 'side')).toBeWithinMm(0, 0.01);
    // 247.5 wide at the waist, 180 below: the lower end of the centre turns by 2 asin(12 / 495) about the side.
    const a = openingAngle(12, 247.5);
    const end = pathEnd(edge(g, 'back', 'centre').path);
    expect(end.x).toBeWithinMm(247.5 - 247.5 * Math.cos(a) - 180 * Math.sin(a), 0.01);
    expect(end.y).toBeWithinMm(247.5 * Math.sin(a) - 180 * Math.cos(a), 0.01);
  });

  it('swayback taken out at the neck, 12: neckline 12 lower, kept in length; waist and tip stay', () => {
    const { g, grew } = alter(bodice, 'swayback-seam', { amount: 12 });
    expect(grew('back', 'neck')).toBeWithinMm(0, 1e-9);
    expect(grew('back', 'centre')).toBeWithinMm(-12, 1e-9);
    // Shoulder from (196, 355) to (72, 380).
    expect(len(g, 'back', 'shoulder')).toBeWithinMm(Math.hypot(124, 25), 1e-6);
    expect(grew('back', 'side')).toBeWithinMm(0, 1e-9);
  });
});

/** x of the back's armhole at a height: its curve from (228, 160.10) by (188, 163), (178, 250) to (196, 355), solved by halving. */
function hingeWidth(y: number): number {
  const path = edge(bodice, 'back', 'armhole').path;
  let [lo, hi] = [0, 1];
  for (let i = 0; i < 60; i++) {
    const middle = (lo + hi) / 2;
    if (pathAt(path, middle).y < y) lo = middle;
    else hi = middle;
  }
  return pathAt(path, lo).x;
}

describe('front, seat and width', () => {
  it('chest 6 narrower: the armhole 6 further in at its notch, tip and underarm stay; cap half follows', () => {
    const { g, grew } = alter(bodice, 'chest-width', { amount: -6 });
    const notch = (x: Garment) =>
      pathAt(edge(x, 'front', 'armhole').path, edge(x, 'front', 'armhole').notches[0]!.at);
    expect(notch(bodice).x - notch(g).x).toBeWithinMm(6, 1e-6);
    expect(pathStart(edge(g, 'front', 'shoulder').path)).toEqual({ x: 190, y: 360 });
    expect(grew('sleeve', 'cap-front')).toBeWithinMm(grew('front', 'armhole'), 0.1);
  });

  it('abdomen 10 and 24 wider: centre front 10 higher, side 0; each of 2 edges 12 out at hip and hem', () => {
    const { g, grew } = alter(skirt, 'abdomen', { amount: 10, width: 24 });
    expect(grew('front', 'centre')).toBeWithinMm(10, 1e-9);
    expect(pathEnd(edge(g, 'front', 'side').path)).toEqual({ x: 200, y: 0 });
    expect(grew('front', 'hem')).toBeWithinMm(12, 1e-6);
    expect(grew('back', 'centre')).toBeWithinMm(0, 1e-9);
    // At the dart's mouths, 100 and 120 of 200 from the centre, 5 and 4 are left; its legs are then trued, each by half of what they differ:
    // √(10² + 104²) = 104.480 and √(10² + 105²) = 105.475, so both 104.978.
    const dart = dartOf(find(g, 'front'), 'dart');
    expect(distance(dart.a, dart.point)).toBeWithinMm((Math.hypot(10, 104) + Math.hypot(10, 105)) / 2, 1e-6);
    expect(distance(dart.b, dart.point)).toBeWithinMm((Math.hypot(10, 104) + Math.hypot(10, 105)) / 2, 1e-6);
  });

  it('seat 10: the same behind', () => {
    const { grew } = alter(skirt, 'seat', { amount: 10 });
    expect(grew('back', 'centre')).toBeWithinMm(10, 1e-9);
    expect(grew('back', 'side')).toBeWithinMm(0, 1e-9);
    expect(grew('front', 'centre')).toBeWithinMm(0, 1e-9);
  });

  it('by seams, 40 at the hip: 10 on each of four edges, carried to the hem', () => {
    const { grew } = alter(skirt, 'width-seams', { level: 'hip', total: 40, below: 'parallel' });
    expect(grew('front', 'hem')).toBeWithinMm(10, 1e-6);
    expect(grew('back', 'hem')).toBeWithinMm(10, 1e-6);
  });

  it('by slash, 40 evenly: 10 in each of four halves, put back into the dart at the waist', () => {
    const { g, grew } = alter(skirt, 'width-slash', { total: 40, shape: 'even', dart: 'dart' });
    expect(grew('front', 'hem')).toBeWithinMm(10, 1e-6);
    expect(dartIntake(dartOf(find(g, 'front'), 'dart'))).toBeWithinMm(30, 1e-6);
    expect(grew('front', 'waist-centre') + grew('front', 'waist-side')).toBeWithinMm(0, 1e-6);
    expect(grew('waistband', 'waist')).toBeWithinMm(0, 0.05);
  });

  it('by darts, waist 24 wider: 4 darts 6 narrower; the half band 12 longer', () => {
    const { g, grew } = alter(skirt, 'waist-darts', { total: 24 });
    expect(dartIntake(dartOf(find(g, 'front'), 'dart'))).toBeWithinMm(14, 1e-6);
    expect(dartIntake(dartOf(find(g, 'back'), 'dart'))).toBeWithinMm(18, 1e-6);
    expect(grew('waistband', 'waist')).toBeWithinMm(12, 0.1);
  });

  it('side seam 6 to the front at the top, 10 at the hem: fronts lose what backs gain', () => {
    const { grew } = alter(skirt, 'side-seam-moved', { top: 6, bottom: 10 });
    expect(grew('front', 'hem')).toBeWithinMm(-10, 1e-3);
    expect(grew('back', 'hem')).toBeWithinMm(10, 1e-3);
    expect(grew('front', 'waist-side')).toBeWithinMm(-6, 1e-3);
    expect(grew('back', 'waist-side')).toBeWithinMm(6, 1e-3);
  });

  it('balance 12: front 6 longer, back 6 shorter, armhole round the same but for its shape', () => {
    const { grew } = alter(bodice, 'balance', { amount: 12 });
    expect(grew('front', 'centre')).toBeWithinMm(6, 1e-6);
    expect(grew('back', 'centre')).toBeWithinMm(-6, 1e-6);
    expect(grew('sleeve', 'cap-front')).toBeWithinMm(grew('front', 'armhole'), 0.1);
    expect(grew('sleeve', 'cap-back')).toBeWithinMm(grew('back', 'armhole'), 0.1);
  });

  it('left hip 12 higher: left side seam 12 longer at the waist, right as it was', () => {
    const { g } = alter(skirt, 'high-hip', { side: 'left', amount: 12 });
    // Front left as drawn: side from (260, −600) to (200, 12).
    expect(len(g, 'front-left', 'side')).toBeWithinMm(Math.hypot(60, 612), 1e-6);
    expect(len(g, 'back-left', 'side')).toBeWithinMm(Math.hypot(60, 612), 1e-6);
    expect(len(g, 'front-right', 'side')).toBeWithinMm(Math.hypot(60, 600), 1e-9);
    expect(len(g, 'front-left', 'centre')).toBeWithinMm(600, 1e-9);
  });
});

describe('sleeve', () => {
  const cap = (g: Garment): number => len(g, 'sleeve', 'cap-front') + len(g, 'sleeve', 'cap-back');

  it('upper arm 20 wider: 10 at each underarm corner, nothing at the elbow, cap seam kept', () => {
    const { g } = alter(bodice, 'upper-arm', { amount: 20, cap: 'line' });
    expect(pathStart(edge(g, 'sleeve', 'cap-back').path)).toEqual({ x: 170, y: 0 });
    expect(pathEnd(edge(g, 'sleeve', 'cap-front').path)).toEqual({ x: -170, y: 0 });
    expect(cap(g)).toBeWithinMm(cap(bodice), 0.01);
    const u = edge(g, 'sleeve', 'underarm-back');
    // The seam runs from (105, −430) to (160, 0): half-way up, (132.5, −215), is the elbow.
    const elbow = pathAt(u.path, u.crossings[0]!.at);
    expect(elbow.x).toBeWithinMm(132.5, 1e-3);
  });

  it('cap ease 8 less: cap seam 8 shorter, the wanted ease with it', () => {
    const { g } = alter(bodice, 'cap-ease', { amount: -8 });
    expect(cap(g) - cap(bodice)).toBeWithinMm(-8, 0.01);
    expect(g.seams.find((s) => s.id === 'armhole')!.join).toEqual({ kind: 'eased', least: -8, most: 32 });
  });

  it('cap 10 higher: the crown at 150', () => {
    const { g, out } = alter(bodice, 'cap-height', { amount: 10 });
    expect(pathStart(edge(g, 'sleeve', 'cap-front').path)).toEqual({ x: 0, y: 150 });
    expect(out.findings.find((f) => f.code === 'cap-ease-changed')!.amount).toBeWithinMm(
      cap(g) - cap(bodice),
      1e-9,
    );
  });

  it('elbow 12: back seam 12 longer in a dart of 12, front seam kept', () => {
    const { g, grew } = alter(bodice, 'elbow', { amount: 12, excess: 'dart' });
    expect(grew('sleeve', 'underarm-front')).toBeWithinMm(0, 0.01);
    const sewn = len(g, 'sleeve', 'underarm-back') + len(g, 'sleeve', 'underarm-back-2');
    expect(sewn - len(bodice, 'sleeve', 'underarm-back')).toBeWithinMm(0, 0.3);
    expect(dartIntake(dartOf(find(g, 'sleeve'), 'elbow-dart'))).toBeWithinMm(12, 0.2);
  });
});

describe('trousers', () => {
  it('crotch 15 deeper: both crotch seams and sides 15 longer', () => {
    const { g, grew } = alter(trousers, 'crotch-depth', { amount: 15 });
    // The sides lean 30 in 1000 between hip and waist: √(0.45² + 15²) along them.
    expect(grew('front', 'side')).toBeWithinMm(15, 0.02);
    expect(pathEnd(edge(g, 'front', 'crotch').path).y).toBeWithinMm(-265, 1e-9);
    expect(grew('front', 'inseam')).toBeWithinMm(0, 1e-9);
  });

  it('back crotch point 12 out: (−110, −250) to (−122, −250); the knee stays', () => {
    const { g } = alter(trousers, 'crotch-length', { front: 0, back: 12 });
    expect(pathStart(edge(g, 'back', 'inseam').path)).toEqual({ x: -122, y: -250 });
    expect(pathStart(edge(g, 'front', 'inseam').path)).toEqual({ x: -50, y: -250 });
    const was = edge(trousers, 'back', 'inseam');
    const now = edge(g, 'back', 'inseam');
    expect(
      distance(pathAt(now.path, now.crossings[0]!.at), pathAt(was.path, was.crossings[0]!.at)),
    ).toBeLessThan(0.01);
  });

  it('seat 15 and point 5: hip wedge at the centre, side kept', () => {
    const { g, grew } = alter(trousers, 'trouser-seat', { amount: 15, point: 5 });
    expect(grew('back', 'side')).toBeWithinMm(0, 0.02);
    expect(pathStart(edge(g, 'back', 'inseam').path)).toEqual({ x: -115, y: -250 });
    // At the hip (y −180) the back is from the crotch curve to the side; the waist's centre turns about the side's end of that line.
    const line = find(trousers, 'back').lines.find((l) => l.level === 'hip')!;
    const [l, r] = [pathStart(line.path), pathEnd(line.path)];
    const a = openingAngle(15, r.x - l.x);
    const was = { x: 30 - r.x, y: 30 - r.y };
    const waist = pathStart(edge(g, 'back', 'crotch').path);
    expect(waist.x).toBeWithinMm(r.x + was.x * Math.cos(a) + was.y * Math.sin(a), 0.05);
    expect(waist.y).toBeWithinMm(r.y - was.x * Math.sin(a) + was.y * Math.cos(a), 0.05);
  });

  it('legs 30 longer: hem 30 lower, knee 15', () => {
    const { g } = alter(trousers, 'inseam', { amount: 30 });
    expect(pathStart(edge(g, 'front', 'hem').path).y).toBeWithinMm(-1030, 1e-9);
    const knee = find(g, 'front').lines.find((l) => l.level === 'knee')!;
    expect(pathEnd(knee.path).y).toBeWithinMm(-550 - 15, 0.6);
  });

  it('hem 40 wider round each leg: 10 at each of four edges', () => {
    const { g } = alter(trousers, 'leg-width', { level: 'hem', amount: 40 });
    expect(edge(g, 'front', 'hem').path[0]).toEqual({ x: 10, y: -1000 });
    expect(pathEnd(edge(g, 'front', 'hem').path)).toEqual({ x: 210, y: -1000 });
  });
});

describe('darts', () => {
  const before = dartOf(find(bodice, 'front'), 'side-dart');

  it('rotated to the shoulder: same angle, opening at the shoulder by its distance from the point', () => {
    const { g } = alter(bodice, 'dart-rotate', {
      piece: 'front',
      dart: 'side-dart',
      edge: 'shoulder',
      at: 0.5,
    });
    const now = dartOf(find(g, 'front'), 'side-dart-moved');
    expect(now.angle).toBeCloseTo(before.angle, 9);
    // The shoulder's middle (130, 380) is √(5² + 265²) = 265.05 from (125, 115); 2 atan(15 / 109) opens there by 2 × 265.05 × 15 / 110.03.
    expect(dartIntake(now)).toBeWithinMm((2 * Math.hypot(5, 265) * 15) / Math.hypot(109, 15), 1e-6);
    expect(find(g, 'front-lining').darts.map((d) => d.id)).toContain('side-dart-moved');
  });

  it('split by a third: a third of the angle there, two thirds left', () => {
    const { g } = alter(bodice, 'dart-split', {
      piece: 'front',
      dart: 'side-dart',
      edge: 'shoulder',
      at: 0.5,
      share: 1 / 3,
    });
    expect(dartOf(find(g, 'front'), 'side-dart-split').angle).toBeCloseTo(before.angle / 3, 9);
    expect(dartOf(find(g, 'front'), 'side-dart').angle).toBeCloseTo((2 * before.angle) / 3, 9);
  });

  it('to ease: the waist edge 20 longer, the band eases it', () => {
    const { g, grew, out } = alter(skirt, 'dart-to-ease', { piece: 'front', dart: 'dart' });
    expect(grew('front', 'waist-side') + grew('front', 'waist-centre')).toBeWithinMm(20, 1e-9);
    expect(find(g, 'front').darts).toEqual([]);
    expect(g.seams.some((s) => s.id === 'front-dart')).toBe(false);
    expect(g.seams.find((s) => s.id === 'waist')!.join).toEqual({ kind: 'eased', least: -20, most: -20 });
    expect(out.findings.find((f) => f.code === 'dart-eased')!.amount).toBeWithinMm(20, 1e-9);
    expect(grew('waistband', 'waist')).toBeWithinMm(0, 1e-9);
  });

  it('into the seam: side waist corner 20 in, nothing 100 below, at the height of the dart point', () => {
    const { g, grew } = alter(skirt, 'dart-into-seam', { piece: 'front', dart: 'dart' });
    const side = edge(g, 'front', 'side');
    // The seam is sewn to a back that did not change, so it keeps its length, and the waist gets shorter by the 20 of the dart. Above −100 the seam was
    // √(10² + 100²) = 100.5; straight to (180, 0) it would be √(30² + 100²) = 104.4. Straight to (180, −y) it is 100.5 with 100 − y = √(100.5² − 30²) = 95.9;
    // the curve, a little longer, asks for a little more than 4.1.
    expect(grew('front', 'side')).toBeWithinMm(0, 0.01);
    expect(grew('front', 'waist-side') + grew('front', 'waist-centre')).toBeWithinMm(0, 0.01);
    // Its waist edge, 90 from the dart's middle to the side, now 70, dips by that: 4.4² / (2 × 70) = 0.14 of its width.
    expect(pathEnd(side.path).x).toBeWithinMm(180 - 0.14, 0.05);
    expect(-pathEnd(side.path).y).toBeWithinMm(4.4, 0.3);
    // The side runs from (260, −600) to (200, 0): at −100 it is at x = 210.
    const y = (p: { y: number }): number => p.y;
    const near = Array.from({ length: 2001 }, (_, i) => pathAt(side.path, i / 2000)).reduce((a, b) =>
      Math.abs(y(a) + 100) < Math.abs(y(b) + 100) ? a : b,
    );
    expect(near.x).toBeWithinMm(210, 0.1);
    expect(find(g, 'front').darts).toEqual([]);
  });
});

it('leaves no entry of the catalogue out', () => {
  expect(CATALOGUE.map((a: Alteration) => a.id).filter((id) => !tested.has(id))).toEqual([]);
});
