import { REFUSAL_WORDS as NO } from '../../words/refusal-table.ts';
import { exchangeFinding } from '../../words/words-table.ts';
import { MM_PER } from '../../../garment/index.ts';
import type { Finding } from '../../../garment/index.ts';
import type { Point } from '../../../geometry/index.ts';
import { NOTCH_LAYERS, DXF_LAYERS as L } from '../../drawing/layer-table.ts';
import { readEntities, type DxfFile, type Entity } from './entities.ts';
import { DxfError, dxfText, readPairs } from './pairs.ts';

/** One block: one piece in one size. Coordinates in mm. */
export interface DxfPiece {
  readonly block: string;
  readonly name: string;
  readonly size: string;
  /** Cut how many: left and right, as the file says. */
  readonly quantity: readonly [number, number] | null;
  readonly material: string;
  readonly annotations: readonly string[];
  /** Cut line, closed, last point not repeated. */
  readonly boundary: readonly Point[];
  readonly turnPoints: readonly Point[];
  readonly sew: readonly (readonly Point[])[];
  readonly grain: readonly [Point, Point] | null;
  readonly mirror: readonly [Point, Point] | null;
  readonly notches: readonly Point[];
  readonly internals: readonly (readonly Point[])[];
  readonly cutouts: readonly (readonly Point[])[];
  readonly drills: readonly Point[];
  readonly labels: readonly { readonly at: Point; readonly text: string }[];
}

/** One DXF file: one style. */
export interface DxfStyle {
  readonly name: string;
  readonly sampleSize: string;
  /** `file`: its own UNITS text; `header`: drawing header; `assumed`: neither. */
  readonly unitsFrom: 'file' | 'header' | 'assumed';
  readonly units: 'in' | 'mm' | 'cm' | 'm';
  readonly pieces: readonly DxfPiece[];
  readonly findings: readonly Finding[];
}

export const MM = { in: MM_PER.in, mm: 1, cm: 10, m: 1000 } as const;

/** The unit of a file: its own word, the code in its header, else millimetres. */
export function units(
  file: DxfFile,
  texts: readonly string[],
): { units: DxfStyle['units']; from: DxfStyle['unitsFrom'] } {
  for (const text of texts) {
    const said = /^UNITS\s*:\s*(\w+)/i.exec(text)?.[1]?.toUpperCase();
    if (said === 'ENGLISH' || said === 'INCH' || said === 'INCHES') return { units: 'in', from: 'file' };
    if (said === 'METRIC' || said === 'MM') return { units: 'mm', from: 'file' };
    if (said === 'CM') return { units: 'cm', from: 'file' };
  }
  // $INSUNITS of the open DXF reference: 1 inch, 4 mm, 5 cm, 6 m.
  const named = { '1': 'in', '4': 'mm', '5': 'cm', '6': 'm' } as const;
  const code = file.header.get('$INSUNITS')?.trim() ?? '';
  if (code in named) return { units: named[code as keyof typeof named], from: 'header' };
  return { units: 'mm', from: 'assumed' };
}

function value(texts: readonly string[], key: RegExp): string {
  for (const text of texts) {
    const m = key.exec(text);
    if (m) return text.slice(m[0].length).trim();
  }
  return '';
}

const same = (a: Point, b: Point, within: number) => Math.hypot(a.x - b.x, a.y - b.y) <= within;

/** Without repeated neighbours and without the start repeated at the end. */
function clean(points: readonly Point[], within = 1e-4): Point[] {
  const out = points.filter((p, i) => i === 0 || !same(p, points[i - 1]!, within));
  while (out.length > 1 && same(out[0]!, out.at(-1)!, within)) out.pop();
  return out;
}

function piece(block: string, entities: readonly Entity[], mm: number): DxfPiece {
  const scale = (p: Point): Point => ({ x: p.x * mm, y: p.y * mm });
  const onLayer = (layer: number) => entities.filter((e) => Number(e.layer) === layer);
  const lines = (layer: number) =>
    onLayer(layer).flatMap((e) =>
      e.kind === 'line' ? [{ points: e.points.map(scale), closed: e.closed }] : [],
    );
  const points = (layer: number) => onLayer(layer).flatMap((e) => (e.kind === 'point' ? [scale(e.at)] : []));
  const texts = entities.flatMap((e) => (e.kind === 'text' ? [e.text.trim()] : []));
  const boundaries = lines(L.boundary).sort((a, b) => b.points.length - a.points.length);
  const span = (layer: number): [Point, Point] | null => {
    const first = lines(layer)[0]?.points;
    return first ? [first[0]!, first.at(-1)!] : null;
  };
  const quantity = /(\d+)\s*,\s*(\d+)/.exec(value(texts, /^QUANTITY\s*:/i));
  const single = /^(\d+)$/.exec(value(texts, /^QUANTITY\s*:/i));
  return {
    block,
    name: value(texts, /^PIECE NAME\s*:/i) || block,
    size: value(texts, /^SIZE\s*:/i),
    quantity: quantity ? [Number(quantity[1]), Number(quantity[2])] : single ? [Number(single[1]), 0] : null,
    material: value(texts, /^MATERIAL\s*:/i),
    annotations: texts
      .filter((t) => /^ANNOTATION\s*:/i.test(t))
      .map((t) => t.replace(/^ANNOTATION\s*:\s*/i, '')),
    boundary: clean(boundaries[0]?.points ?? []),
    turnPoints: points(L.turnPoints),
    sew: lines(L.sew).map((l) => (l.closed ? [...clean(l.points), clean(l.points)[0]!] : clean(l.points))),
    grain: span(L.grain),
    mirror: span(L.mirror),
    notches: [...NOTCH_LAYERS].flatMap(points),
    internals: lines(L.internal).map((l) => l.points),
    cutouts: lines(L.cutout).map((l) => l.points),
    drills: points(L.drill),
    labels: entities.flatMap((e) =>
      e.kind === 'text' && Number(e.layer) === L.annotation ? [{ at: scale(e.at), text: e.text }] : [],
    ),
  };
}

function sizeFromBlock(p: DxfPiece): DxfPiece {
  if (p.size !== '') return p;
  // Blocks are commonly named NAME_SIZE or NAME-SIZE where the piece text says no size.
  const m = /^(.*)[_-]([^_-]+)$/.exec(p.block);
  return m && p.name === p.block ? { ...p, name: m[1]!, size: m[2]! } : p;
}

/**
 * A DXF file by ASTM D6673 to its pieces, in mm. Throws DxfError with a line where it is no DXF;
 * everything milder is a finding: assumed units, pieces without boundary, entities that were not read.
 */
export function readDxfStyle(bytes: Uint8Array): DxfStyle {
  return styleOf(readEntities(readPairs(dxfText(bytes))));
}

/** Whether a file names pieces as D6673 does, or its blocks hold outlines on the layers for them. */
export function holdsPieces(file: DxfFile): boolean {
  const outlined = (entities: readonly Entity[]) =>
    entities.some((e) => e.kind === 'line' && (Number(e.layer) === L.boundary || Number(e.layer) === L.sew));
  const named = [...file.entities, ...file.blocks.flatMap((block) => block.entities)].some(
    (e) => e.kind === 'text' && /^(?:PIECE|STYLE) NAME\s*:/i.test(e.text.trim()),
  );
  return named || file.blocks.some((block) => outlined(block.entities));
}

/** The pieces of a file that is read. Throws as `readDxfStyle`. */
export function styleOf(file: DxfFile): DxfStyle {
  const findings: Finding[] = [];
  const styleTexts = file.entities.flatMap((e) => (e.kind === 'text' ? [e.text.trim()] : []));
  const blockTexts = file.blocks.flatMap((b) =>
    b.entities.flatMap((e) => (e.kind === 'text' ? [e.text.trim()] : [])),
  );
  const { units: unit, from } = units(file, [...styleTexts, ...blockTexts]);
  const drawn = file.blocks.filter((b) => b.entities.some((e) => e.kind === 'line'));
  const loose = file.entities.some((e) => e.kind === 'line')
    ? [{ name: 'loose', entities: file.entities }]
    : [];
  const pieces: DxfPiece[] = [];
  for (const block of drawn.length > 0 ? drawn : loose) {
    const one = sizeFromBlock(piece(block.name, block.entities, MM[unit]));
    if (one.boundary.length < 3 && one.sew.length === 0) {
      findings.push(exchangeFinding('dxf-no-outline', 'warning', {}, { block: block.name }));
    } else pieces.push(one);
  }
  if (drawn.length > 0 && loose.length > 0) {
    findings.push(exchangeFinding('dxf-loose-lines', 'note', {}, {}));
  }
  for (const [kind, count] of file.skipped) {
    findings.push(exchangeFinding('dxf-not-read', 'note', {}, { kind, count }));
  }
  if (from === 'assumed') {
    findings.push(exchangeFinding('units-assumed', 'warning', {}, { taken: 'mm' }));
  }
  const size = Math.max(
    0,
    ...pieces.flatMap((p) => p.boundary.map((q) => Math.max(Math.abs(q.x), Math.abs(q.y)))),
  );
  const spans = pieces.map((p) => extent(p.boundary));
  if (spans.some((s) => s > 5000) || (pieces.length > 0 && Math.max(...spans) < 60)) {
    findings.push(
      exchangeFinding('units-doubtful', 'warning', {}, { long: Math.max(...spans), piece: true }),
    );
  }
  if (!Number.isFinite(size)) throw new DxfError(NO['dxf-far']());
  if (pieces.length === 0) throw new DxfError(NO['dxf-no-piece']());
  return {
    name: value(styleTexts, /^STYLE NAME\s*:/i) || value(blockTexts, /^STYLE NAME\s*:/i),
    sampleSize: value(styleTexts, /^SAMPLE SIZE\s*:/i) || value(blockTexts, /^SAMPLE SIZE\s*:/i),
    units: unit,
    unitsFrom: from,
    pieces,
    findings,
  };
}

function extent(points: readonly Point[]): number {
  if (points.length === 0) return 0;
  const xs = points.map((p) => p.x);
  const ys = points.map((p) => p.y);
  const spread = (v: readonly number[]) =>
    v.reduce((a, b) => Math.max(a, b)) - v.reduce((a, b) => Math.min(a, b));
  return Math.max(spread(xs), spread(ys));
}
