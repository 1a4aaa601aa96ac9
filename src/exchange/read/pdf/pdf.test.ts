// Sources: ISO 32000-1 (memory) for layers (8.11), forms (8.10), clipping (8.5.4), page turning and user units (7.7.3.3).
import { describe, expect, it } from 'vitest';
import { pathLength, pointsBox } from '../../../geometry/index.ts';
import { ReadError } from '../../drawing/budget.ts';
import type { Drawing, Stroke } from '../../drawing/drawing.ts';
import { plainPdf } from '../../plain-pdf.test-case.ts';
import { readPdf } from './read.ts';

const MM = 25.4 / 72;
const long = (strokes: readonly Stroke[]): number => strokes.reduce((sum, s) => sum + pathLength(s.path), 0);
const on = (drawing: Drawing, layer: string): Stroke[] => drawing.strokes.filter((s) => s.layer === layer);
/** Reads a page of this content alone. */
const page = (content: string, more: Parameters<typeof plainPdf>[0] = {}): Promise<Drawing> =>
  readPdf(plainPdf({ content, ...more }));
/** The four control points of a quarter of a circle of 100 points about the page's 200 200, as four cubics. */
const K = 55.22847498;
const CIRCLE = `300 200 m 300 ${200 + K} ${200 + K} 300 200 300 c ${200 - K} 300 100 ${200 + K} 100 200 c 100 ${200 - K} ${200 - K} 100 200 100 c ${200 + K} 100 300 ${200 - K} 300 200 c h`;

describe('layers', () => {
  it('keep their names, and those switched off are read and said to be hidden', async () => {
    const drawing = await readPdf(plainPdf());
    expect(drawing.layers).toEqual([
      { name: 'Size 40', visible: true },
      { name: 'Size 36', visible: false },
    ]);
    expect(on(drawing, 'Size 40')[0]).toMatchObject({ colour: '#ff0000' });
    expect(on(drawing, 'Size 40')[0]!.dash).toEqual([6 * MM, 3 * MM]);
    expect(on(drawing, 'Size 36')[0]).toMatchObject({ colour: '#0000ff', dash: [] });
  });

  it('hold what is nested in them, and nothing after their end', async () => {
    const drawing = await page(
      '/OC /big BDC /Span BMC 10 10 m 20 10 l S EMC 10 20 m 20 20 l S EMC 10 30 m 20 30 l S',
    );
    expect(drawing.strokes.map((s) => s.layer)).toEqual(['Size 40', 'Size 40', '']);
  });
});

describe('forms', () => {
  it('lie where their matrix puts them, cut to their box', async () => {
    const drawing = await page('q 0.5 0 0 0.5 10 20 cm /form Do Q 0 0 m 10 0 l S');
    const box = pointsBox(drawing.strokes[0]!.path);
    // The form's matrix moves by 400 700 first; then the half scale, then 10 20.
    expect(box.minX / MM).toBeCloseTo(210, 4);
    expect(box.minY / MM).toBeCloseTo(370, 4);
    expect((box.maxX - box.minX) / MM).toBeCloseTo(36, 4);
    // Its own state ends with it.
    expect(drawing.strokes[1]!.path[0]).toEqual({ x: 0, y: 0 });
  });

  it('that draw themselves end', async () => {
    const bomb = '/self Do /self Do 0 0 m 10 0 l S';
    const drawing = await page('/self Do 0 0 m 10 0 l S', {
      objects: [
        `<< /Type /XObject /Subtype /Form /BBox [0 0 100 100] /Resources << /XObject << /self 10 0 R >> >> /Length ${bomb.length} >>\nstream\n${bomb}\nendstream`,
      ],
      resources: '<< /XObject << /self 10 0 R >> >>',
    }).catch((error: unknown) => error);
    if (drawing instanceof Error) expect(drawing).toBeInstanceOf(ReadError);
    else expect((drawing as Drawing).strokes.length).toBeLessThan(1000);
  });
});

describe('clipping', () => {
  it('by a box cuts a line exactly', async () => {
    const { strokes } = await page('100 100 50 50 re W n 0 120 m 300 120 l S');
    expect(long(strokes) / MM).toBeCloseTo(50, 4);
  });

  it('by a circle leaves the chord', async () => {
    const { strokes } = await page(`${CIRCLE} W n 0 260 m 500 260 l S`);
    // Half chord √(100² − 60²) = 80; the four cubics leave the circle by 0.03 %.
    expect(long(strokes) / MM).toBeGreaterThan(159.9);
    expect(long(strokes) / MM).toBeLessThan(160.1);
  });

  it('hides what lies in the box of a circle and outside of it', async () => {
    await expect(page(`${CIRCLE} W n 285 285 10 10 re S`)).rejects.toMatchObject({ code: 'no-lines' });
  });

  it('by a ring shows nothing in its hole', async () => {
    const { strokes } = await page('100 100 300 300 re 200 200 100 100 re W* n 0 250 m 500 250 l S');
    expect(strokes).toHaveLength(2);
    expect(long(strokes) / MM).toBeCloseTo(200, 4);
  });

  it('ends with the state it was set in', async () => {
    const { strokes } = await page('q 0 0 10 10 re W n Q 0 120 m 300 120 l S');
    expect(long(strokes) / MM).toBeCloseTo(300, 4);
  });
});

describe('pages', () => {
  const mark = '100 200 m 150 200 l S';
  it.each([
    [0, { x: 100, y: 200 }, { x: 1, y: 0 }],
    [90, { x: 200, y: 300 }, { x: 0, y: -1 }],
    [180, { x: 300, y: 600 }, { x: -1, y: 0 }],
    [270, { x: 600, y: 100 }, { x: 0, y: 1 }],
  ] as const)('turned by %i are read as seen', async (turn, start, way) => {
    // A page of 400 × 800 points; start and way worked out by hand for each turn.
    const { strokes, pages } = await page(mark, { mediaBox: '[0 0 400 800]', page: `/Rotate ${turn}` });
    const [a, b] = [strokes[0]!.path[0]!, strokes[0]!.path[3]!];
    expect(a.x / MM).toBeCloseTo(start.x, 4);
    expect(a.y / MM).toBeCloseTo(start.y, 4);
    expect((b.x - a.x) / MM).toBeCloseTo(50 * way.x, 4);
    expect((b.y - a.y) / MM).toBeCloseTo(50 * way.y, 4);
    expect(pages[0]!.width / MM).toBeCloseTo(turn % 180 === 0 ? 400 : 800, 4);
  });

  it('whose corner is not zero and whose unit is their own are in true millimetres', async () => {
    const { strokes, pages } = await page(mark, {
      mediaBox: '[50 100 450 900]',
      page: '/UserUnit 2',
    });
    expect(strokes[0]!.path[0]!.x).toBeCloseTo(50 * 2 * MM, 4);
    expect(strokes[0]!.path[0]!.y).toBeCloseTo(100 * 2 * MM, 4);
    expect(pages[0]!.width).toBeCloseTo(400 * 2 * MM, 4);
  });
});

describe('files of no use are named', () => {
  const image =
    '<< /Type /XObject /Subtype /Image /Width 1 /Height 1 /ColorSpace /DeviceGray /BitsPerComponent 8 /Length 1 >>\nstream\nA\nendstream';
  it('a scan', async () => {
    await expect(
      page('/scan Do', { objects: [image], resources: '<< /XObject << /scan 10 0 R >> >>' }),
    ).rejects.toMatchObject({ code: 'only-images' });
  });

  it('a page without lines', async () => {
    await expect(page('BT ET')).rejects.toMatchObject({ code: 'no-lines' });
  });

  it('no PDF, an empty one, a torn one', async () => {
    await expect(readPdf(new TextEncoder().encode('hello'))).rejects.toMatchObject({
      code: 'not-this-format',
    });
    await expect(readPdf(new Uint8Array())).rejects.toMatchObject({ code: 'empty' });
    await expect(readPdf(new TextEncoder().encode('%PDF-1.5\nnothing more'))).rejects.toMatchObject({
      code: 'damaged',
    });
  });

  it('one too large, cancelled, or out of time', async () => {
    await expect(readPdf(plainPdf(), { limits: { bytes: 100 } })).rejects.toMatchObject({
      code: 'too-large',
    });
    await expect(readPdf(plainPdf(), { limits: { strokes: 1 } })).rejects.toMatchObject({
      code: 'too-large',
    });
    await expect(readPdf(plainPdf(), { signal: AbortSignal.abort() })).rejects.toMatchObject({
      code: 'cancelled',
    });
    let now = 0;
    await expect(readPdf(plainPdf(), { clock: () => (now += 100_000) })).rejects.toMatchObject({
      code: 'too-slow',
    });
  });
});
