import { EVIDENCE_WORDS as SAY, type Teller } from '../words/evidence-table.ts';
import { exchangeFinding } from '../words/words-table.ts';
import { distance, pathEnd, pathIsStraight, pathStart } from '../../geometry/index.ts';
import type { Finding } from '../../garment/index.ts';
import type { DrawnText, Stroke } from '../drawing/drawing.ts';
import type { Nest } from './nest.ts';
import type { Outline } from './outline.ts';
import type { ProposedSize } from './proposal.ts';
import { sizeInWords } from './words/label-words.ts';
import { sizeRank } from './words/size-rank.ts';

/** What may tell sizes apart, plainest first. */
const TELLERS: readonly { readonly word: Teller; readonly key: (stroke: Stroke) => string }[] = [
  { word: 'file', key: (s) => s.belongs?.size ?? '' },
  { word: 'layer', key: (s) => s.layer },
  { word: 'colour', key: (s) => s.colour },
  { word: 'dash', key: dashKey },
  { word: 'colour-dash', key: (s) => `${s.colour} ${dashKey(s)}` },
  { word: 'width', key: (s) => s.width.toFixed(2) },
  { word: 'colour-dash-width', key: (s) => `${s.colour} ${dashKey(s)} ${s.width.toFixed(2)}` },
  { word: 'layer-colour-dash', key: (s) => `${s.layer} ${s.colour} ${dashKey(s)}` },
];

function dashKey(stroke: Stroke): string {
  return stroke.dash.map((length) => length.toFixed(1)).join('-') || 'unbroken';
}

/** A teller that leaves more than this share of the outlines without a key of their own tells nothing. */
const TOLD = 0.75;

export interface SizesFound {
  readonly sizes: readonly ProposedSize[];
  /** The size's index of an open line, −1 for a style that belongs to no size. */
  readonly sizeOf: (stroke: Stroke) => number;
  /** In each nest one outline per size; null where the nest has none in that size. */
  readonly bySize: readonly (readonly (Outline | null)[])[];
  /** Whether something on the sheet says what they are called; else they are numbered. */
  readonly named: boolean;
  readonly findings: readonly Finding[];
}

/** Finds what tells the sizes apart, orders them by area and names them by layer or by the key printed on the sheet. */
export function findSizes(
  nests: readonly Nest[],
  texts: readonly DrawnText[],
  strokes: readonly Stroke[],
): SizesFound {
  const many = nests.filter((nest) => nest.outlines.length > 1);
  if (many.length === 0) return oneSize(nests);
  const teller = TELLERS.map((one) => ({ one, fit: tellerFit(one.key, many) })).reduce((best, next) =>
    next.fit > best.fit + 1e-9 ? next : best,
  );
  if (teller.fit < TOLD) return sizesByOrder(nests, many, texts);
  const { key, word } = teller.one;
  const areas = new Map<string, { sum: number; count: number }>();
  for (const nest of many) {
    const mean = nest.outlines.reduce((sum, outline) => sum + outline.area, 0) / nest.outlines.length;
    for (const outline of nest.outlines) {
      const k = key(outline.style);
      const entry = areas.get(k) ?? { sum: 0, count: 0 };
      areas.set(k, { sum: entry.sum + outline.area / mean, count: entry.count + 1 });
    }
  }
  const keys = [...areas]
    .toSorted((a, b) => a[1].sum / a[1].count - b[1].sum / b[1].count || (a[0] < b[0] ? -1 : 1))
    .map(([k]) => k);
  const index = new Map(keys.map((k, i) => [k, i]));
  const named = sizeNames(keys, word, key, texts, strokes);
  const findings: Finding[] = [];
  if (!named.sure) {
    findings.push(exchangeFinding('sizes-unnamed', 'warning', {}, { count: keys.length, by: word }));
  }
  const bySize = nests.map((nest) => {
    const list: (Outline | null)[] = keys.map(() => null);
    if (nest.outlines.length === 1) return list.map(() => nest.outlines[0]!);
    for (const outline of nest.outlines) {
      const i = index.get(key(outline.style))!;
      // Of two in one size the larger is the outline; the other is a line inside it.
      if (!list[i] || list[i].area < outline.area) list[i] = outline;
    }
    return list;
  });
  return {
    sizes: keys.map((k, i) => ({
      id: named.names[i]!,
      label: named.names[i]!,
      evidence: SAY['told-by']({ by: word, layer: word === 'layer' ? k : null }),
    })),
    // Too short for its dashes to show, a tick is drawn unbroken in every size: it then belongs to whichever outline it stands on.
    sizeOf: (stroke) => (word === 'dash' && stroke.dash.length === 0 ? -1 : (index.get(key(stroke)) ?? -1)),
    bySize,
    named: named.sure,
    findings,
  };
}

/** Share of the outlines that the teller gives a key of their own in their nest, less a little for every key it needs. */
function tellerFit(key: (stroke: Stroke) => string, nests: readonly Nest[]): number {
  let own = 0;
  let all = 0;
  const keys = new Set<string>();
  for (const nest of nests) {
    const here = new Set(nest.outlines.map((outline) => key(outline.style)));
    for (const k of here) keys.add(k);
    own += here.size;
    all += nest.outlines.length;
  }
  const most = Math.max(...nests.map((nest) => nest.outlines.length));
  return own / all - 0.02 * Math.max(0, keys.size - most);
}

/** Names of sizes in one row stand within this of the next, mm. */
const NAMES_MM = 40;

/** Nothing tells the lines apart: the commonest number of outlines in a nest is the number of sizes, the smallest outline the first. */
function sizesByOrder(
  nests: readonly Nest[],
  many: readonly Nest[],
  texts: readonly DrawnText[],
): SizesFound {
  const often = new Map<number, number>();
  for (const { outlines } of many) often.set(outlines.length, (often.get(outlines.length) ?? 0) + 1);
  const [count] = [...often].reduce((a, b) => (b[1] > a[1] || (b[1] === a[1] && b[0] > a[0]) ? b : a));
  const said = namesInWords(count, texts);
  const names = said ?? Array.from({ length: count }, (_, i) => String(i + 1));
  const sizes = names.map((name): ProposedSize => ({
    id: name,
    label: name,
    evidence: SAY['told-by-order'](),
  }));
  return {
    sizes,
    sizeOf: () => -1,
    bySize: nests.map(({ outlines }) => {
      if (outlines.length === 1) return sizes.map(() => outlines[0]!);
      const inward = outlines.toSorted((a, b) => a.area - b.area);
      return sizes.map((_, i) => inward[i] ?? null);
    }),
    named: said !== null,
    findings: [exchangeFinding('sizes-by-order', 'warning', {}, { sizes: names })],
  };
}

function oneSize(nests: readonly Nest[]): SizesFound {
  return {
    sizes: [{ id: 'one', label: 'one size', evidence: SAY['drawn-once']() }],
    sizeOf: () => 0,
    bySize: nests.map((nest) => [nest.outlines[0]!]),
    named: true,
    findings: [],
  };
}

function sizeNames(
  keys: readonly string[],
  word: Teller,
  key: (stroke: Stroke) => string,
  texts: readonly DrawnText[],
  strokes: readonly Stroke[],
): { names: string[]; sure: boolean } {
  if (word === 'file') return { names: [...keys], sure: true };
  const byKey = keys.map((k) => layerSize(k, word));
  if (byKey.every((name) => name !== '') && new Set(byKey).size === keys.length)
    return { names: byKey, sure: true };
  const legend = legendNames(keys, key, texts, strokes);
  if (legend) return { names: legend, sure: true };
  const inWords = namesInWords(keys.length, texts);
  if (inWords) return { names: inWords, sure: true };
  return { names: keys.map((_, i) => String(i + 1)), sure: false };
}

function layerSize(key: string, word: Teller): string {
  if (!word.startsWith('layer')) return '';
  const name = key.trim();
  const whole = sizeInWords(name);
  if (whole !== null) return whole;
  // `s36`, `layer size_36`, `36 (large)`: the only number in the name.
  const numbers = name.match(/\d{1,3}/g) ?? [];
  return numbers.length === 1 ? numbers[0] : '';
}

/** As many size names as there are sizes, standing in one row or column: the smallest is the first. Page numbers are no sizes. */
function namesInWords(count: number, texts: readonly DrawnText[]): string[] | null {
  const words = texts.flatMap((text) => {
    const name = sizeInWords(text.text);
    return name !== null ? [{ text, name }] : [];
  });
  for (const first of words) {
    for (const across of [true, false]) {
      const far = ({ at }: DrawnText) =>
        Math.abs(across ? at.y - first.text.at.y : at.x - first.text.at.x) < first.text.size;
      const near = ({ at }: DrawnText) =>
        Math.hypot(at.x - first.text.at.x, at.y - first.text.at.y) < NAMES_MM * count;
      const row = words.filter(({ text }) => far(text) && near(text) && text.size === first.text.size);
      const names = [...new Set(row.map(({ name }) => name))];
      if (names.length === count && row.length === count)
        return names.toSorted((a, b) => sizeRank(a) - sizeRank(b));
    }
  }
  return null;
}

/** A key printed on the sheet: a size's name level with a sample of its line close by. */
function legendNames(
  keys: readonly string[],
  key: (stroke: Stroke) => string,
  texts: readonly DrawnText[],
  strokes: readonly Stroke[],
): string[] | null {
  const found = new Map<string, { name: string; gap: number }>();
  const samples = strokes
    .filter((stroke) => !stroke.closed && keys.includes(key(stroke)) && pathIsStraight(stroke.path))
    .map((stroke) => ({ k: key(stroke), ends: [pathStart(stroke.path), pathEnd(stroke.path)] }))
    .filter(({ ends: [a, b] }) => distance(a!, b!) < 80 && distance(a!, b!) > 4);
  for (const text of texts) {
    const name = sizeInWords(text.text);
    if (name === null) continue;
    const [c, s] = [Math.cos(text.angle), Math.sin(text.angle)];
    for (const { k, ends } of samples) {
      // Along and across the writing, from its start.
      const own = ends.map(({ x, y }) => ({
        along: (x - text.at.x) * c + (y - text.at.y) * s,
        across: (y - text.at.y) * c - (x - text.at.x) * s,
      })) as [{ along: number; across: number }, { along: number; across: number }];
      if (Math.abs(own[0].across - own[1].across) > 1) continue;
      const level = Math.abs((own[0].across + own[1].across) / 2 - text.size * 0.35);
      const [low, high] = [Math.min(own[0].along, own[1].along), Math.max(own[0].along, own[1].along)];
      const gap = Math.min(Math.abs(high), Math.abs(low - text.width));
      if (level > Math.max(2, text.size * 0.7) || gap > 25) continue;
      const known = found.get(k);
      if (!known || gap < known.gap) found.set(k, { name, gap });
    }
  }
  const names = keys.map((k) => found.get(k)?.name ?? '');
  return names.every(Boolean) && new Set(names).size === names.length ? names : null;
}
