import { describe, expect, it } from 'vitest';
import { garmentAtSize } from '../../garment/index.ts';
import { movePoint, pathFlatten, ringContains, type Point } from '../../geometry/index.ts';
import { sample } from '../../samples/index.ts';
import { legPath, runsThrough, type RunLeg } from './run-through.ts';

const bodice = garmentAtSize(sample('stage-bodice'), 4);
const runs = runsThrough(bodice);
const called = (name: string) => runs.find((r) => r.name === name)!;
const pieces = (legs: readonly RunLeg[]): string[] => legs.map((l) => l.piece.id).sort();

describe('lines that run through several pieces', () => {
  it('finds the hem over three seams, the armhole all round, and the neckline over the shoulder', () => {
    expect(pieces(called('Hem').legs)).toEqual(['back-centre', 'back-side', 'front-centre', 'front-side']);
    expect(
      called('Hem')
        .joins.map((j) => j.seam)
        .sort(),
    ).toEqual(['princess-back', 'princess-front', 'side']);
    expect(called('Hem').closed).toBe(false);
    const armhole = called('Armhole');
    expect(armhole.closed).toBe(true);
    expect(pieces(armhole.legs)).toEqual(pieces(called('Hem').legs));
    expect(armhole.joins.map((j) => j.seam).sort()).toEqual([
      'princess-back',
      'princess-front',
      'shoulder',
      'side',
    ]);
    const neck = runs.find((r) => r.legs.some((l) => l.edge.id === 'neck' && l.piece.id === 'back-centre'))!;
    expect(pieces(neck.legs)).toEqual(['back-centre', 'front-centre']);
  });

  it('joins the legs without a gap, for every line of every sample', () => {
    for (const id of ['stage-bodice', 'a-line-skirt', 'knit-tee', 'chorus-smock', 'work-trousers']) {
      const garment = garmentAtSize(sample(id), 2);
      for (const run of runsThrough(garment)) {
        for (const [i, leg] of run.legs.slice(1).entries()) {
          const [end, start] = [legPath(run.legs[i]!).at(-1)!, legPath(leg)[0]!];
          expect(Math.hypot(end.x - start.x, end.y - start.y), `${id} ${run.name}`).toBeLessThan(0.01);
        }
      }
    }
  });

  it('lays the next piece on the other side of the seam, so that the line goes on and does not turn back', () => {
    for (const run of [called('Hem'), called('Armhole')])
      for (const join of run.joins) expect(Math.abs(join.turn), `${run.name}, ${join.name}`).toBeLessThan(20);
    // At the hem the panels are nearly straight: just inside it, no piece covers its neighbour.
    const ring = (l: RunLeg): Point[] =>
      l.piece.edges.flatMap((e) => pathFlatten(e.path, 0.1).slice(0, -1)).map((p) => movePoint(p, l.motion));
    const { legs } = called('Hem');
    for (const [i, leg] of legs.entries()) {
      const path = legPath(leg);
      const [a, b] = [path[0]!, path.at(-1)!];
      const long = Math.hypot(b.x - a.x, b.y - a.y);
      const inside = leg.forward !== Boolean(leg.motion.mirror) ? 5 : -5;
      const spot = {
        x: (a.x + b.x) / 2 - ((b.y - a.y) / long) * inside,
        y: (a.y + b.y) / 2 + ((b.x - a.x) / long) * inside,
      };
      for (const [k, other] of legs.entries())
        expect(ringContains(ring(other), spot), `${leg.piece.id} in ${other.piece.id}`).toBe(k === i);
    }
  });
});
