import { describe, expect, it } from 'vitest';
import { distance, pathAt, pathEnd, pathLength, pathStart, placeCurvature } from '../../geometry/index.ts';
import type { Path } from '../../geometry/index.ts';
import { endDirection, startDirection } from '../curve.ts';
import { sample } from '../catalogue.ts';
import { between, cornerAngle, edgeLength, edgePath, ends, piece } from '../tape.test-case.ts';

// Ranges are trade habit (common practice) as gathered in the drafting guide, unless another source is named.
const bodice = sample('stage-bodice');
const sizes = bodice.chart.sizes.map((_, s) => s);
const body = (measure: keyof typeof bodice.chart.body, s: number): number => bodice.chart.body[measure]![s]!;
const each = (check: (s: number, label: string) => void): void =>
  sizes.forEach((s) => check(s, `size ${bodice.chart.sizes[s]!.id}`));
const armhole = (half: 'front' | 'back', s: number): number =>
  edgeLength(bodice, `${half}-side`, 'armhole', s) + edgeLength(bodice, `${half}-centre`, 'armhole', s);
const heading = (p: { x: number; y: number }): number => (Math.atan2(p.y, p.x) * 180) / Math.PI;

/** How often the path changes the way it bends, flatter than 1 in 700 mm not counted. */
function bends(path: Path): number {
  let turns = 0;
  let last = 0;
  for (let cubic = 0; cubic < (path.length - 1) / 3; cubic++) {
    for (let i = 1; i < 20; i++) {
      const k = placeCurvature(path, { cubic, t: i / 20 });
      if (Math.abs(k) < 1 / 700) continue;
      if (last !== 0 && Math.sign(k) !== last) turns++;
      last = Math.sign(k);
    }
  }
  return turns;
}

describe('ease', () => {
  it('is fitted at bust (close to 3 in at most) and the same in every size within 5 mm', () => {
    each((s, label) => between(bodice.chart.finished['bust']![s]! - body('bust-girth', s), 55, 76, label));
  });
  it('is at least 1 in at the waist and 2 in at the high hip', () => {
    each((s, label) => {
      between(bodice.chart.finished['waist']![s]! - body('waist-girth', s), 25, 60, label);
      between(bodice.chart.finished['high-hip']![s]! - body('high-hip-girth', s), 50, 70, label);
    });
  });
  it('is 40 to 60 round the upper arm, and the wrist passes the hand (ANSUR I: hand girth 35 more than the wrist)', () => {
    each((s, label) => {
      between(bodice.chart.finished['upper-arm']![s]! - body('upper-arm-girth', s), 40, 60, label);
      between(bodice.chart.finished['wrist']![s]! - body('wrist-girth', s), 50, 90, label);
    });
  });
});

describe('neck and shoulder', () => {
  it('has a back neck N/5 wide and 18 to 24 deep, a front neck N/5 + 5 to 15 deep', () => {
    each((s, label) => {
      const fifth = body('neck-base-girth', s) / 5;
      const back = ends(bodice, 'back-centre', 'neck', s);
      between(back.start.x - back.end.x, fifth - 4, fifth + 2, label);
      between(back.start.y - back.end.y, 18, 24, label);
      const front = ends(bodice, 'front-centre', 'neck', s);
      between(front.start.x, fifth - 4, fifth + 2, label);
      between(front.start.y - front.end.y, fifth + 5, fifth + 15, label);
    });
  });
  it('slopes 18 to 21 degrees behind and 22 to 26 in front, the back shoulder 6 to 12 longer', () => {
    each((s, label) => {
      const slope = (half: 'front' | 'back') => {
        const { start, end } = ends(bodice, `${half}-centre`, 'shoulder', s);
        return heading({ x: start.x - end.x, y: end.y - start.y });
      };
      between(slope('back'), 18, 21, label);
      between(slope('front'), 22, 26, label);
      between(
        edgeLength(bodice, 'back-centre', 'shoulder', s) - edgeLength(bodice, 'front-centre', 'shoulder', s),
        6,
        12,
        label,
      );
    });
  });
  it('meets the centres at right angles, and neckline and armhole leave the shoulder square', () => {
    each((s, label) => {
      expect(cornerAngle(bodice, 'front-centre', 'neck', s), label).toBeCloseTo(90, 1);
      expect(cornerAngle(bodice, 'back-centre', 'neck', s), label).toBeCloseTo(90, 1);
      for (const half of ['front-centre', 'back-centre']) {
        expect(cornerAngle(bodice, half, 'armhole', s), `${label} ${half}`).toBeCloseTo(90, 1);
        expect(cornerAngle(bodice, half, 'shoulder', s), `${label} ${half}`).toBeCloseTo(90, 1);
      }
    });
  });
});

describe('armhole', () => {
  it('is 0.42 to 0.48 of the bust, the front 5 to 15 shorter than the back', () => {
    each((s, label) => {
      between((armhole('front', s) + armhole('back', s)) / body('bust-girth', s), 0.42, 0.48, label);
      between(armhole('back', s) - armhole('front', s), 5, 15, label);
    });
  });
  it('lies 15 to 25 under the body’s own armhole', () => {
    each((s, label) => {
      const nape = ends(bodice, 'back-centre', 'neck', s).end.y;
      const underarm = ends(bodice, 'back-side', 'armhole', s).start.y;
      between(nape - underarm - body('scye-depth', s), 15, 25, label);
    });
  });
  it('is a little wider across than the body, the front 10 to 20 narrower than the back in each half', () => {
    each((s, label) => {
      const back = pathStart(edgePath(bodice, 'back-centre', 'armhole', s)).x;
      const front = pathStart(edgePath(bodice, 'front-centre', 'armhole', s)).x;
      between(back - body('across-back', s) / 2, 0, 8, label);
      between(back - front, 10, 20, label);
    });
  });
  it('is level where front and back meet under the arm, square to the side seam', () => {
    each((s, label) => {
      for (const half of ['front-side', 'back-side']) {
        const out = startDirection(edgePath(bodice, half, 'armhole', s));
        expect(Math.abs(out.y), label).toBeLessThan(1e-3);
        expect(cornerAngle(bodice, half, 'side', s), label).toBeCloseTo(90, 0);
      }
    });
  });
  it('runs on smoothly over the panel seam when that is closed, and bends one way only', () => {
    each((s, label) => {
      for (const half of ['front', 'back'] as const) {
        const joint =
          cornerAngle(bodice, `${half}-centre`, 'princess', s) +
          cornerAngle(bodice, `${half}-side`, 'armhole', s);
        expect(joint, `${label} ${half}`).toBeCloseTo(180, 1);
        expect(bends(edgePath(bodice, `${half}-side`, 'armhole', s))).toBe(0);
        expect(bends(edgePath(bodice, `${half}-centre`, 'armhole', s))).toBe(0);
      }
    });
  });
  it('is scooped deeper in front: a third of the way up from the underarm the front has come further in, against its width', () => {
    each((s, label) => {
      const hollow = (half: 'front' | 'back'): number => {
        const path = edgePath(bodice, `${half}-side`, 'armhole', s);
        const [low, high] = [pathStart(path), pathEnd(path)];
        const chord = distance(low, high);
        const bulge = Math.max(
          ...Array.from({ length: 19 }, (_, i) => {
            const p = pathAt(path, (i + 1) / 20);
            return ((high.x - low.x) * (p.y - low.y) - (high.y - low.y) * (p.x - low.x)) / chord;
          }),
        );
        return bulge / chord;
      };
      expect(hollow('front'), label).toBeGreaterThan(hollow('back') + 0.03);
    });
  });
});

describe('panel seams', () => {
  it('pass 10 to 25 mm to the side of the bust point, which is on the centre panel at the bust’s height and half spread', () => {
    each((s, label) => {
      const point = piece(bodice, 'front-centre').marks.find((m) => m.kind === 'bust-point')!.at[s]!;
      const seam = edgePath(bodice, 'front-centre', 'princess', s);
      const nearest = Math.min(
        ...Array.from({ length: 400 }, (_, i) => distance(pathAt(seam, i / 399), point)),
      );
      between(nearest, 10, 25, label);
      expect(point.x, label).toBeCloseTo(body('bust-spread', s) / 2, 1);
      const neckSide = ends(bodice, 'front-centre', 'neck', s).start;
      between(distance(neckSide, point) - body('bust-height', s), 0, 5, label);
    });
  });
  it('hold a bust dart that grows with the bust, from 12 to 20 degrees', () => {
    const darts = sizes.map((s) => {
      const centre = edgePath(bodice, 'front-centre', 'princess', s);
      const side = edgePath(bodice, 'front-side', 'princess', s);
      const apex = centre[9]!;
      const towards = (p: { x: number; y: number }) => heading({ x: p.x - apex.x, y: p.y - apex.y });
      return towards(pathEnd(centre)) - towards(pathStart(side));
    });
    darts.forEach((dart, s) => between(dart, 12, 20, `size ${s}`));
    expect(darts.at(-1)!).toBeGreaterThan(darts[0]! + 1);
  });
  it('are 3 to 6 longer on the side front, all of it between the notches 50 above and below the bust', () => {
    each((s, label) => {
      const along = (id: 'front-centre' | 'front-side'): Record<string, number> => {
        const edge = piece(bodice, id).edges.find((e) => e.id === 'princess')!;
        const whole = pathLength(edge.path[s]!);
        const up = id === 'front-centre';
        return Object.fromEntries([
          ...edge.notches.map((n) => [n.id, (up ? n.at[s]! : 1 - n.at[s]!) * whole]),
          ['whole', whole],
        ]);
      };
      const [centre, side] = [along('front-centre'), along('front-side')];
      expect(side['low-front-panel']! - centre['low-front-panel']!, label).toBeCloseTo(0, 1);
      expect(
        side['whole']! - side['high-front-panel']! - (centre['whole']! - centre['high-front-panel']!),
        label,
      ).toBeCloseTo(0, 1);
      expect(centre['high-front-panel']! - centre['low-front-panel']!, label).toBeCloseTo(100, 1);
      between(side['whole']! - centre['whole']!, 3, 6, label);
    });
  });
  it('have no corner at the bust or the blade', () => {
    each((s, label) => {
      for (const id of ['front-centre', 'back-centre', 'front-side', 'back-side']) {
        const path = edgePath(bodice, id, 'princess', s);
        for (let k = 3; k < path.length - 1; k += 3) {
          const into = endDirection(path.slice(0, k + 1));
          const out = startDirection(path.slice(k));
          expect(into.x * out.y - into.y * out.x, `${label} ${id}`).toBeCloseTo(0, 3);
        }
      }
    });
  });
  it('take out 20 to 35 in front and 25 to 38 behind at the waist, the side 10 to 25 on each piece, the centre back 5 to 15', () => {
    each((s, label) => {
      const at = (id: string, edge: string): number => {
        const found = piece(bodice, id).edges.find((e) => e.id === edge)!;
        const share = found.crossings.find((c) => c.level === 'waist')!.at[s]!;
        return pathAt(found.path[s]!, share).x;
      };
      between(at('front-side', 'princess') - at('front-centre', 'princess'), 20, 35, label);
      between(at('back-side', 'princess') - at('back-centre', 'princess'), 25, 38, label);
      for (const half of ['front', 'back']) {
        between(
          ends(bodice, `${half}-side`, 'armhole', s).start.x - at(`${half}-side`, 'side'),
          10,
          25,
          label,
        );
      }
      between(at('back-centre', 'centre-back'), 5, 15, label);
    });
  });
});

describe('sleeve', () => {
  it('has 15 to 30 of cap ease, more behind than in front, none of it below the notches', () => {
    each((s, label) => {
      const front = edgeLength(bodice, 'sleeve', 'cap-front', s) - armhole('front', s);
      const back = edgeLength(bodice, 'sleeve', 'cap-back', s) - armhole('back', s);
      between(front + back, 15, 30, label);
      expect(back, label).toBeGreaterThan(front);
      const low = (id: string, edge: string, notch: string, fromEnd: boolean): number => {
        const found = piece(bodice, id).edges.find((e) => e.id === edge)!;
        const share = found.notches.find((n) => n.id === notch)!.at[s]!;
        return (fromEnd ? 1 - share : share) * pathLength(found.path[s]!);
      };
      expect(low('sleeve', 'cap-front', 'armhole-front', true), label).toBeCloseTo(
        low('front-side', 'armhole', 'armhole-front', false),
        1,
      );
      expect(low('sleeve', 'cap-back', 'armhole-back', false), label).toBeCloseTo(
        low('back-side', 'armhole', 'armhole-back', false),
        1,
      );
    });
  });
  it('has a cap between a fifth and a third of the armhole high', () => {
    each((s, label) =>
      between(
        ends(bodice, 'sleeve', 'cap-back', s).end.y / (armhole('front', s) + armhole('back', s)),
        1 / 5,
        1 / 3,
        label,
      ),
    );
  });
  it('bends over once on each half, level at crown and underarm, the front hollow the deeper', () => {
    each((s, label) => {
      const [front, back] = [
        edgePath(bodice, 'sleeve', 'cap-front', s),
        edgePath(bodice, 'sleeve', 'cap-back', s),
      ];
      for (const cap of [front, back]) {
        expect(bends(cap), label).toBe(1);
        expect(Math.abs(startDirection(cap).y), label).toBeLessThan(1e-3);
        expect(Math.abs(endDirection(cap).y), label).toBeLessThan(1e-3);
      }
      const hollow = (path: Path): number => {
        const [low, high] =
          pathStart(path).y < pathEnd(path).y
            ? [pathStart(path), pathEnd(path)]
            : [pathEnd(path), pathStart(path)];
        const [x, y] = [high.x - low.x, high.y - low.y];
        return Math.max(
          ...Array.from({ length: 60 }, (_, i) => {
            const p = pathAt(path, i / 59);
            return -Math.sign(x) * ((x * (p.y - low.y) - y * (p.x - low.x)) / Math.hypot(x, y));
          }),
        );
      };
      expect(hollow(front), label).toBeGreaterThan(hollow(back));
    });
  });
  it('follows the armhole under the arm: for the first 25 mm within 4 mm', () => {
    each((s, label) => {
      for (const [half, id] of [
        ['front', 'cap-front'],
        ['back', 'cap-back'],
      ] as const) {
        const cap = edgePath(bodice, 'sleeve', id, s);
        const from = half === 'front' ? cap.toReversed() : cap;
        const hole = edgePath(bodice, `${half}-side`, 'armhole', s);
        const rise = (path: Path): number => {
          const p = pathAt(path, 25 / pathLength(path));
          return p.y - pathStart(path).y;
        };
        between(rise(from) - rise(hole), -4, 4, `${label} ${half}`);
      }
    });
  });
});

describe('collar, facings and lining', () => {
  it('has a stand collar 30 to 40 high, 0 to 2 shorter than the neckline, its upper edge 8 to 14 shorter', () => {
    each((s, label) => {
      const neck = edgeLength(bodice, 'collar', 'neck', s);
      const line =
        edgeLength(bodice, 'front-centre', 'neck', s) + edgeLength(bodice, 'back-centre', 'neck', s);
      between(line - neck, -0.05, 2, label);
      between(neck - edgeLength(bodice, 'collar', 'top', s), 8, 14, label);
      between(edgeLength(bodice, 'collar', 'centre-back', s), 30, 40, label);
      expect(cornerAngle(bodice, 'collar', 'centre-front', s), label).toBeCloseTo(90, 1);
    });
  });
  it('leaves 10 to 30 of ease round the neck base', () => {
    each((s, label) =>
      between(2 * edgeLength(bodice, 'collar', 'neck', s) - body('neck-base-girth', s), 10, 30, label),
    );
  });
  it('has facings 50 to 70 deep', () => {
    each((s, label) => {
      for (const id of ['front-neck-facing', 'back-neck-facing'])
        between(edgeLength(bodice, id, 'centre', s), 50, 70, `${label} ${id}`);
    });
  });
  it('ends its lining 15 to 20 above the shell', () => {
    each((s, label) => {
      for (const id of ['front-side', 'back-side', 'sleeve']) {
        const edge = id === 'sleeve' ? 'underarm-back' : 'side';
        between(
          edgeLength(bodice, id, edge, s) - edgeLength(bodice, `${id}-lining`, edge, s),
          15,
          20,
          `${label} ${id}`,
        );
      }
    });
  });
});

describe('hem', () => {
  it('is square to every seam it meets, and side seams are equal', () => {
    each((s, label) => {
      for (const id of ['front-centre', 'front-side', 'back-side', 'back-centre']) {
        expect(cornerAngle(bodice, id, 'hem', s), `${label} ${id}`).toBeCloseTo(90, 1);
      }
      expect(edgeLength(bodice, 'front-side', 'side', s), label).toBeCloseTo(
        edgeLength(bodice, 'back-side', 'side', s),
        2,
      );
    });
  });
});
