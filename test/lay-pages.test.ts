import { describe, expect, it } from 'vitest';
import { writeDxfStrokes } from '../src/exchange/index.ts';
import { garmentAtSize, renderPhrase, TELL_BOTH, TELL_CM, TELL_IN } from '../src/garment/index.ts';
import { pointsBox } from '../src/geometry/index.ts';
import type { Point } from '../src/geometry/index.ts';
import {
  cuttingPieces,
  drawLay,
  jobFor,
  layBest,
  layMeasures,
  laySvg,
  notions,
  projectorPages,
} from '../src/layout/index.ts';
import { sample } from '../src/samples/index.ts';

const at = (id: string) => {
  const pattern = sample(id);
  return garmentAtSize(pattern, Math.floor(pattern.chart.sizes.length / 2));
};
const garment = at('knit-tee');
const choice = { cloth: 'shell', widths: [], folds: [], nap: 'two-way' } as const;
const job = jobFor(cuttingPieces(garment, 'shell'), choice, 1400, 'lengthwise');
const lay = layBest(job, { seed: 1, budget: { sweeps: 5 } })!;
const drawing = drawLay(job, lay);

/** Outlines of a layer in an SVG: M x y L x y … Z. */
const rings = (svg: string, layer: string): Point[][] =>
  [...svg.matchAll(new RegExp(`data-layer="${layer}" d="M([^"]*)"`, 'g'))].map((m) =>
    m[1]!
      .replace('Z', '')
      .split('L')
      .map((p) => ({ x: Number(p.split(' ')[0]), y: Number(p.split(' ')[1]) })),
  );
const size = (ring: readonly Point[]): [number, number] => {
  const b = pointsBox(ring);
  return [b.maxX - b.minX, b.maxY - b.minY];
};
const header = (svg: string) => {
  const [, w, h] = /width="([\d.]+)mm" height="([\d.]+)mm"/.exec(svg)!;
  const [, , , vw, vh] = /viewBox="(\S+) (\S+) (\S+) (\S+)"/.exec(svg)!;
  return { w: Number(w), h: Number(h), vw: Number(vw), vh: Number(vh) };
};

describe('the picture of a lay', () => {
  const svg = laySvg(job, lay, { measures: true, tell: TELL_CM });
  it('says names as they are, whatever letters they hold, in XML that reads', () => {
    const named = { ...job, pieces: job.pieces.map((p) => ({ ...p, name: 'Top 5" & <x>\u0007' })) };
    const text = laySvg(named, lay, { measures: true, tell: TELL_CM });
    expect(text).toContain('Top 5&quot; &amp; &lt;x&gt;');
    expect(text).not.toContain('\u0007');
  });

  it('is true to scale: a unit is a millimetre, every piece as large as it is cut', () => {
    const { w, h, vw, vh } = header(svg);
    expect([w, h]).toEqual([vw, vh]);
    const drawn = rings(svg, 'CUT').map(size);
    expect(drawn).toHaveLength(lay.placements.length);
    for (const [k, p] of lay.placements.entries()) {
      // The tee's pieces lie along or against the cloth: height along it, width across.
      const [wide, high] = size(job.pieces.find((c) => c.piece === p.piece)!.outline);
      expect(drawn[k]![0]).toBeCloseTo(p.rotation % 180 === 90 ? high : wide, 2);
      expect(drawn[k]![1]).toBeCloseTo(p.rotation % 180 === 90 ? wide : high, 2);
    }
  });
  it('names every piece, fold, selvage and cut end', () => {
    for (const piece of job.pieces) expect(svg).toContain(`>${piece.number} ${piece.name}`);
    for (const word of ['>selvage<', '>fold<', '>cut end<']) expect(svg).toContain(word);
    expect(rings(svg, 'FOLD')).toHaveLength(1);
    expect(rings(svg, 'SELVAGE')).toHaveLength(1);
  });
  it('tells distances that a tape finds in the drawing', () => {
    for (const m of layMeasures(job, lay)) {
      const across = m.edge === 'fold' ? m.at.y : 700 - m.at.y;
      expect(m.fromEdge).toBeCloseTo(across, 6);
      expect(m.fromEdge).toBeLessThanOrEqual(350);
      expect(m.fromEnd).toBeCloseTo(m.at.x, 6);
      expect(svg).toContain(`${Number((m.fromEdge / 10).toFixed(1))} cm from ${m.edge}`);
    }
    const grain = rings(svg, 'GRAIN').filter((r) => r.length === 2);
    for (const [a, b] of grain) expect(a!.y).toBeCloseTo(b!.y, 2);
  });
});

describe('projector pages', () => {
  const pages = projectorPages(job, lay, TELL_CM);
  it('are tested by squares of 100 mm and equal diagonals', () => {
    const { w, vw } = header(pages.testPage);
    expect(w).toBe(vw);
    const xs = [...pages.testPage.matchAll(/d="M(\d+) 0V/g)].map((m) => Number(m[1]));
    expect(xs.length).toBeGreaterThan(3);
    xs.forEach((x, i) => expect(x).toBe(100 * i));
    expect(pages.testPage).toMatch(/M0 0L(\d+) \1M\1 0L0 \1/);
  });
  it('are tested by squares of 4 in for a tape in inches', () => {
    const { testPage } = projectorPages(job, lay, TELL_IN);
    const xs = [...testPage.matchAll(/d="M([\d.]+) 0V/g)].map((m) => Number(m[1]));
    expect(xs.length).toBeGreaterThan(3);
    // An inch is 25.4 mm (international yard and pound agreement, 1959).
    xs.forEach((x, i) => expect(x).toBeCloseTo(4 * 25.4 * i, 3));
    expect(testPage).toContain('Each square 4 in');
  });
  it('show the lay at true scale, white on black, every piece with its number', () => {
    const { w, h, vw, vh } = header(pages.lay);
    expect([w, h]).toEqual([vw, vh]);
    expect(rings(pages.lay, 'CUT').map(size)).toEqual(
      rings(laySvg(job, lay, { measures: false, tell: TELL_CM }), 'CUT').map(size),
    );
    const numbers = [...pages.lay.matchAll(/>(\d+)<\/text>/g)].map((m) => Number(m[1])).sort();
    expect(numbers).toEqual(drawing.pieces.map((p) => p.number).sort());
    expect(pages.lay).toContain('fill="#000"');
  });
});

describe('the lay as DXF', () => {
  it('holds every line of the drawing in its layer, in mm', () => {
    // The format's own rule: pairs of lines, a group code and its value; 10 and 20 are x and y of the entity begun by 0.
    const lines = writeDxfStrokes(drawing.strokes).trimEnd().split('\r\n');
    const read: { layer: string; points: Point[]; closed: boolean }[] = [];
    let entity = '';
    for (let i = 0; i < lines.length; i += 2) {
      const [code, value] = [Number(lines[i]), lines[i + 1]!];
      if (code === 0) entity = value;
      if (code === 0 && value === 'POLYLINE') read.push({ layer: '', points: [], closed: false });
      const last = read.at(-1);
      if (!last) continue;
      if (entity === 'POLYLINE' && code === 8) last.layer = value;
      if (entity === 'POLYLINE' && code === 70) last.closed = value === '1';
      if (entity === 'VERTEX' && code === 10) last.points.push({ x: Number(value), y: 0 });
      if (entity === 'VERTEX' && code === 20) last.points.push({ ...last.points.pop()!, y: Number(value) });
    }
    expect(read.map((r) => [r.layer, r.closed, r.points.length])).toEqual(
      drawing.strokes.map((s) => [s.layer, s.closed, s.points.length]),
    );
    read.forEach((r, k) =>
      r.points.forEach((p, n) => {
        expect(p.x).toBeCloseTo(drawing.strokes[k]!.points[n]!.x, 5);
        expect(p.y).toBeCloseTo(drawing.strokes[k]!.points[n]!.y, 5);
      }),
    );
    expect(lines[lines.indexOf('$INSUNITS') + 2]).toBe('4');
  });
});

describe('notions from the pieces', () => {
  it('the skirt’s zip is in its side seam, from the waist seam down to its notch', () => {
    const zip = notions(at('a-line-skirt')).filter((n) => n.what === 'zip');
    expect(zip).toHaveLength(1);
    // The draft puts the notch 200 mm down the seam; zips are sold in steps of 50 mm.
    expect(zip[0]!.length).toBeWithinMm(200, 0.5);
    expect(renderPhrase(zip[0]!.say, TELL_BOTH)).toContain('buy 20 cm (8 in)');
  });
  it('the bodice has one zip, in the centre back, none in its facing', () => {
    const zip = notions(at('stage-bodice')).filter((n) => n.what === 'zip');
    expect(zip).toHaveLength(1);
    expect(renderPhrase(zip[0]!.say, TELL_BOTH)).toContain('centre back');
  });
  it('the smock’s short opening takes buttons or studs, the trousers’ underlap one fastening', () => {
    expect(notions(at('chorus-smock')).map((n) => n.what)).toEqual(['fastening']);
    expect(
      notions(at('work-trousers'))
        .map((n) => n.what)
        .sort(),
    ).toEqual(['fastening', 'zip']);
  });
  it('elastic is shorter than the body where it sits; buttons are counted from their marks', () => {
    const say = (round: number) => {
      const found = notions(garment, { waist: round }).find((n) => n.what === 'elastic')!;
      return { length: found.length!, words: renderPhrase(found.say, TELL_CM) };
    };
    // 1 to 3 in (25 to 75 mm) less than the body when joined, 25 mm of it lapped: common practice.
    expect(say(640).length - 25).toBe(640 - 25);
    expect(say(640).words).toContain('cut it 59 cm to 64 cm long');
    // 75 mm less would bind a wrist.
    expect(say(160).words).toContain('cut it 16 cm to 17.5 cm long');
    const [first, ...rest] = garment.pieces;
    const mark = { id: 'b', kind: 'button', level: 'bust', at: { x: 0, y: 0 } } as const;
    const buttoned = { ...garment, pieces: [{ ...first!, marks: [mark, mark, mark] }, ...rest] };
    expect(notions(buttoned).find((n) => n.what === 'buttons')!.count).toBe(3);
  });
});
