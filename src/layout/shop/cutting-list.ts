import { cutWords } from '../../garment/index.ts';
import type { Cloth, DrawnPiece } from '../../garment/index.ts';
import type { Lay, Placement } from '../job/lay-job.ts';

/** One line of the cutting list. */
export interface CuttingLine {
  readonly piece: string;
  readonly number: number;
  readonly name: string;
  readonly cloth: Cloth;
  /** `Cut 2 of the main cloth, a mirrored pair`. */
  readonly cut: string;
  /** Notches to clip, by edge. */
  readonly notches: readonly { readonly edge: string; readonly count: number }[];
  /** Marks to transfer to the cloth. */
  readonly marks: readonly string[];
  /** Ends of the fold and other middles to be marked by a small clip. */
  readonly centres: readonly string[];
}

const MARK_WORDS: Readonly<Record<DrawnPiece['marks'][number]['kind'], string>> = {
  'bust-point': 'bust point',
  'dart-point': 'dart point',
  dot: 'dot',
  button: 'button',
  drill: 'drill hole',
};

/** How often each word stands in a list: `2 dart points`. */
function tally(words: readonly string[]): string[] {
  const counts = new Map<string, number>();
  for (const w of words) counts.set(w, (counts.get(w) ?? 0) + 1);
  return [...counts].map(([w, n]) => (n === 1 ? w : `${n} ${w}s`));
}

/** What to cut, clip and mark, by cloth and then by number. */
function cuttingList(pieces: readonly DrawnPiece[]): CuttingLine[] {
  const order: readonly Cloth[] = ['shell', 'contrast', 'lining', 'interfacing'];
  return pieces
    .map((piece): CuttingLine => ({
      piece: piece.id,
      number: piece.number,
      name: piece.name,
      cloth: piece.cloth,
      cut: cutWords(piece),
      notches: piece.edges
        .filter((e) => e.notches.length > 0)
        .map((e) => ({ edge: e.name, count: e.notches.reduce((n, notch) => n + notch.count, 0) })),
      marks: tally([
        ...piece.marks.map((m) => MARK_WORDS[m.kind]),
        ...piece.darts.map((d) => d.name),
        ...piece.lines.filter((l) => l.kind === 'placement').map(() => 'placement line'),
      ]),
      centres: piece.edges.filter((e) => e.kind === 'fold').map((e) => `both ends of the ${e.name}`),
    }))
    .sort((a, b) => order.indexOf(a.cloth) - order.indexOf(b.cloth) || a.number - b.number);
}

/** A bundle: what is tied together after cutting one cloth. */
export interface Bundle {
  readonly cloth: Cloth;
  readonly lines: readonly CuttingLine[];
  readonly parts: number;
}

/** Pieces bundled by cloth, with the number of parts each bundle must hold. */
export function bundles(pieces: readonly DrawnPiece[]): Bundle[] {
  const lines = cuttingList(pieces);
  return [...new Set(lines.map((l) => l.cloth))].map((cloth) => ({
    cloth,
    lines: lines.filter((l) => l.cloth === cloth),
    parts: pieces.filter((p) => p.cloth === cloth).reduce((n, p) => n + p.worn.length, 0),
  }));
}

/**
 * The order to cut a lay in: pieces on the fold first (they hold the fold still), then pairs, then singles; within each from the cut end on,
 * so that the cloth not yet cut stays in one piece on the table. Common practice.
 */
export function cuttingOrder(lay: Lay): Placement[] {
  const rank: Readonly<Record<Placement['as'], number>> = { 'on-fold': 0, opened: 1, pair: 2, single: 3 };
  return lay.placements.toSorted((a, b) => rank[a.as] - rank[b.as] || a.x - b.x || a.y - b.y);
}
