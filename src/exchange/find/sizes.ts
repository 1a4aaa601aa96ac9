import { pathBox } from '../../geometry/index.ts';
import type { Finding } from '../../garment/index.ts';
import type { DrawnText, Stroke } from '../drawing.ts';
import type { Nest } from './nest.ts';
import type { Outline } from './outline.ts';
import type { ProposedSize } from './proposal.ts';

/** What may tell sizes apart, plainest first. */
const TELLERS: readonly { readonly word: string; readonly key: (stroke: Stroke) => string }[] = [
  { word: 'what the file says', key: (s) => s.belongs?.size ?? '' },
  { word: 'layer', key: (s) => s.layer },
  { word: 'colour', key: (s) => s.colour },
  { word: 'dash', key: dashKey },
  { word: 'colour and dash', key: (s) => `${s.colour} ${dashKey(s)}` },
  { word: 'line width', key: (s) => s.width.toFixed(2) },
  { word: 'colour, dash and width', key: (s) => `${s.colour} ${dashKey(s)} ${s.width.toFixed(2)}` },
  { word: 'layer, colour and dash', key: (s) => `${s.layer} ${s.colour} ${dashKey(s)}` },
];

function dashKey(stroke: Stroke): string {
  return stroke.dash.map((length) => length.toFixed(1)).join('-') || 'unbroken';
}

export interface SizesFound {
  readonly sizes: readonly ProposedSize[];
  /** The size's index of an open line, −1 for a style that belongs to no size. */
  readonly sizeOf: (stroke: Stroke) => number;
  /** In each nest one outline per size; null where the nest has none in that size. */
  readonly bySize: readonly (readonly (Outline | null)[])[];
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
    findings.push({
      code: 'sizes-unnamed',
      severity: 'warning',
      where: {},
      message: `${keys.length} sizes were found by their ${word}, but not what they are called. They are numbered from the smallest.`,
    });
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
      evidence: `told by ${word}: ${k || 'none'}`,
    })),
    // Too short for its dashes to show, a tick is drawn unbroken in every size: it then belongs to whichever outline it stands on.
    sizeOf: (stroke) => (word === 'dash' && stroke.dash.length === 0 ? -1 : (index.get(key(stroke)) ?? -1)),
    bySize,
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

function oneSize(nests: readonly Nest[]): SizesFound {
  return {
    sizes: [{ id: 'one', label: 'one size', evidence: 'every piece is drawn once' }],
    sizeOf: () => 0,
    bySize: nests.map((nest) => [nest.outlines[0]!]),
    findings: [],
  };
}

const SIZE_WORD =
  /^(?:size|sz)?[\s:_-]*((?:\d{1,3}(?:\s?[/–-]\s?\d{1,3})?)|(?:X{0,4}S|M|X{0,5}L|[2-6]XL|[2-6]X))$/i;

function sizeNames(
  keys: readonly string[],
  word: string,
  key: (stroke: Stroke) => string,
  texts: readonly DrawnText[],
  strokes: readonly Stroke[],
): { names: string[]; sure: boolean } {
  if (word === 'what the file says') return { names: [...keys], sure: true };
  const byKey = keys.map((k) => layerSize(k, word));
  if (byKey.every((name) => name !== '') && new Set(byKey).size === keys.length)
    return { names: byKey, sure: true };
  const legend = legendNames(keys, key, texts, strokes);
  if (legend) return { names: legend, sure: true };
  return { names: keys.map((_, i) => String(i + 1)), sure: false };
}

function layerSize(key: string, word: string): string {
  if (!word.startsWith('layer')) return '';
  const name = key.trim();
  const whole = SIZE_WORD.exec(name);
  if (whole) return whole[1]!.replace(/\s/g, '').toUpperCase();
  // `s36`, `layer size_36`, `36 (large)`: the only number in the name.
  const numbers = name.match(/\d{1,3}/g) ?? [];
  return numbers.length === 1 ? numbers[0] : '';
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
    .filter((stroke) => !stroke.closed && keys.includes(key(stroke)))
    .map((stroke) => ({ k: key(stroke), box: pathBox(stroke.path) }))
    .filter(({ box }) => box.maxX - box.minX < 80 && box.maxY - box.minY < 1 && box.maxX - box.minX > 4);
  for (const text of texts) {
    const name = SIZE_WORD.exec(text.text.trim())?.[1];
    if (!name) continue;
    for (const { k, box } of samples) {
      const level = Math.abs((box.minY + box.maxY) / 2 - (text.at.y + text.size * 0.35));
      const gap = Math.min(Math.abs(text.at.x - box.maxX), Math.abs(box.minX - (text.at.x + text.width)));
      if (level > Math.max(2, text.size * 0.7) || gap > 25) continue;
      const known = found.get(k);
      if (!known || gap < known.gap) found.set(k, { name: name.replace(/\s/g, '').toUpperCase(), gap });
    }
  }
  const names = keys.map((k) => found.get(k)?.name ?? '');
  return names.every(Boolean) && new Set(names).size === names.length ? names : null;
}
