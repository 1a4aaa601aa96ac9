import { describe, expect, it } from 'vitest';
import { beforeWashing, notions, yardsUp } from '../src/layout/index.ts';
import { buttonOverlap, widestButton } from '../src/layout/shop/button.ts';
import { repeatRule } from '../src/layout/shop/cloth-needs.ts';
import { linePath } from '../src/geometry/index.ts';
import { wornPair, renderPhrase, TELL_BOTH } from '../src/garment/index.ts';
import type { DrawnPiece, Garment } from '../src/garment/index.ts';
import { bodyShape } from '../src/workbench/drawing/body-shape.ts';

/*
 * The worked examples of docs/trade.md 5.17 that are neither sizes nor alterations: T10, T15, T16, T17. Marks as there: [S] seen, [D] derived.
 * (T1, T3 to T7, T13, T14 stand in alter-worked-examples.test.ts, T1 and T2 also in residual.test.ts, T8, T9, T12 in size-choice.test.ts, T11 in ease-tables.test.ts.)
 */
const IN = 25.4;
const YARD = 36 * IN;

describe('T10: the drawn figure', () => {
  it('of 63 3/4 in has a head of 8 1/2 in: seven and a half to the whole [EC306, S; fraction partly illegible there]', () => {
    const shape = bodyShape({
      id: 'b',
      name: 'B',
      wearer: 'woman',
      show: 'in',
      waist: 'natural',
      readings: { stature: [{ value: 63.75 * IN }] },
    });
    const head = (shape.points.chin.y - shape.points.crown.y) / IN;
    expect(Math.abs(head - 8.5)).toBeLessThan(0.02);
    expect(shape.stature / IN / head).toBeCloseTo(7.5, 2);
  });
});

describe('T15 and T16: cloth', () => {
  it('3 yd needed at 5 % shrinkage is 3.158, so 3 1/4 yd are bought [D]', () => {
    const needed = beforeWashing(3 * YARD, 0.05);
    expect(needed / YARD).toBeCloseTo(3.158, 3);
    expect(yardsUp(needed).text).toBe('3 1/4 yd');
  });

  it('a repeat of 4 1/4 in and two pieces stacked along the cloth: 8 1/2 in more [S, fabric-shop note]', () => {
    expect(repeatRule(2, 4.25 * IN) / IN).toBeCloseTo(8.5, 9);
  });
});

describe('T17: a button of 5/8 in', () => {
  it('wants an extension of 5/16 + 1/4 = 9/16 in beyond the closing line [ASDP rule, S and D]', () => {
    expect(buttonOverlap((5 / 8) * IN) / IN).toBeCloseTo(9 / 16, 9);
    expect(widestButton((9 / 16) * IN) / IN).toBeCloseTo(5 / 8, 9);
  });

  /** A front whose opening edge lies `beyond` past its three buttons. */
  const front = (beyond: number): Garment => {
    const corners = [
      [0, 0, 'hem', 'hem'],
      [200, 0, 'side', 'seam'],
      [200, 400, 'top', 'seam'],
      [0, 400, 'opening', 'opening'],
    ] as const;
    const piece: DrawnPiece = {
      id: 'front',
      name: 'Front',
      number: 1,
      cloth: 'shell',
      worn: wornPair(),
      edges: corners.map(([x, y, id, kind], i) => {
        const [nx, ny] = corners[(i + 1) % corners.length]!;
        return {
          id,
          name: id,
          kind,
          path: linePath({ x, y }, { x: nx, y: ny }),
          from: 'waist',
          crossings: [],
          allowance: 15,
          notches: [],
        };
      }),
      darts: [],
      lines: [],
      marks: [60, 180, 300].map((y) => ({
        id: `b${y}`,
        kind: 'button' as const,
        level: 'waist',
        at: { x: beyond, y },
      })),
    };
    return { pieces: [piece], seams: [], followers: [], bands: [], levels: [] };
  };

  it('and the shopping list says how wide the buttons may be, or that there is no room', () => {
    expect(notions(front((9 / 16) * IN))[0]).toMatchObject({
      what: 'buttons',
      count: 3,
    });
    expect(renderPhrase(notions(front((9 / 16) * IN))[0]!.say, TELL_BOTH)).toBe(
      '3 buttons on Front, at most 16 mm (5/8 in) across',
    );
    expect(renderPhrase(notions(front(5))[0]!.say, TELL_BOTH)).toMatch(/only 5 mm .* beyond them/);
  });
});
