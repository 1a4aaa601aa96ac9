import { called, countOf, cutWords, t } from '../../garment/index.ts';
import type { Cloth, DrawnPiece, Phrase } from '../../garment/index.ts';
import type { Lay, Placement } from '../job/lay-job.ts';

/** One line of the cutting list. */
export interface CuttingLine {
  readonly piece: string;
  readonly number: number;
  readonly name: string;
  readonly cloth: Cloth;
  /** `Cut 2 of the main cloth, a mirrored pair`. */
  readonly cut: Phrase;
  /** Notches to clip, by edge. */
  readonly notches: readonly { readonly edge: string; readonly count: number }[];
  /** Marks to transfer to the cloth. */
  readonly marks: readonly Phrase[];
  /** Ends of the fold and other middles to be marked by a small clip. */
  readonly centres: readonly Phrase[];
}

type MarkKind = DrawnPiece['marks'][number]['kind'] | 'placement';
const MARK: Readonly<Record<MarkKind, readonly [one: Phrase, more: Phrase]>> = {
  'bust-point': [t`bust point`, t`bust points`],
  'dart-point': [t`dart point`, t`dart points`],
  dot: [t`dot`, t`dots`],
  button: [t`button`, t`buttons`],
  drill: [t`drill hole`, t`drill holes`],
  placement: [t`placement line`, t`placement lines`],
};

/** How often each stands in a list. */
function counted<T>(all: readonly T[]): readonly (readonly [T, number])[] {
  const counts = new Map<T, number>();
  for (const one of all) counts.set(one, (counts.get(one) ?? 0) + 1);
  return [...counts];
}

/** What to mark on a piece: `2 dart points`, `bust point`. A dart's name is the person's own, so it is counted, not put into the plural. */
function markWords(piece: DrawnPiece): Phrase[] {
  const placements = piece.lines.filter((l) => l.kind === 'placement');
  const kinds: MarkKind[] = [
    ...piece.marks.map((m) => m.kind),
    ...placements.map(() => 'placement' as const),
  ];
  return [
    ...counted(kinds).map(([kind, n]) => (n === 1 ? MARK[kind][0] : countOf(n, ...MARK[kind]))),
    ...counted(piece.darts.map((d) => d.name)).map(([name, n]) =>
      n === 1 ? t`${called(name)}` : t`${n} × ${called(name)}`,
    ),
  ];
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
      marks: markWords(piece),
      centres: piece.edges.filter((e) => e.kind === 'fold').map((e) => t`both ends of the ${called(e.name)}`),
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
