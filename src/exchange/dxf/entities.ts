import type { Point } from '../../geometry/index.ts';
import { DXF_BOUNDS, DxfError, type Pair } from './pairs.ts';

/** A drawn thing of a DXF file, coordinates in the file's own units. */
export type Entity =
  | {
      readonly kind: 'line';
      readonly layer: string;
      readonly points: readonly Point[];
      readonly closed: boolean;
    }
  | { readonly kind: 'point'; readonly layer: string; readonly at: Point }
  | { readonly kind: 'text'; readonly layer: string; readonly at: Point; readonly text: string }
  | { readonly kind: 'insert'; readonly layer: string; readonly block: string };

export interface Block {
  readonly name: string;
  readonly entities: readonly Entity[];
}

export interface DxfFile {
  readonly header: ReadonlyMap<string, string>;
  readonly blocks: readonly Block[];
  readonly entities: readonly Entity[];
  /** Kinds of entities that were met and not read, with how many. */
  readonly skipped: ReadonlyMap<string, number>;
}

/** Chord error of arcs, in the file's units; small for mm and harmless for inches. */
const ARC_STEPS = 64;

function number(pair: Pair): number {
  const value = Number(pair.value);
  if (pair.value === '' || !Number.isFinite(value)) {
    throw new DxfError(`a number should stand here, but it says "${pair.value.slice(0, 40)}"`, pair.line + 1);
  }
  return value;
}

function field(pairs: readonly Pair[], code: number): Pair | undefined {
  return pairs.find((p) => p.code === code);
}

function coordinate(pairs: readonly Pair[], code: number): number {
  const pair = field(pairs, code);
  return pair ? number(pair) : 0;
}

function pointOf(pairs: readonly Pair[], code = 10): Point {
  return { x: coordinate(pairs, code), y: coordinate(pairs, code + 10) };
}

function layerOf(pairs: readonly Pair[]): string {
  return field(pairs, 8)?.value ?? '0';
}

/** Points of a bulged polyline: a bulge is the tangent of a quarter of the arc's angle (open DXF reference). */
function bulged(vertices: readonly { at: Point; bulge: number }[], closed: boolean): Point[] {
  const points: Point[] = [];
  vertices.forEach((v, i) => {
    points.push(v.at);
    const next = vertices[i + 1] ?? (closed ? vertices[0] : undefined);
    if (!next || v.bulge === 0) return;
    const angle = 4 * Math.atan(v.bulge);
    const dx = next.at.x - v.at.x;
    const dy = next.at.y - v.at.y;
    const chord = Math.hypot(dx, dy);
    if (chord === 0) return;
    const h = chord / 2 / Math.tan(angle / 2);
    const cx = v.at.x + dx / 2 - (dy / chord) * h;
    const cy = v.at.y + dy / 2 + (dx / chord) * h;
    const radius = Math.hypot(v.at.x - cx, v.at.y - cy);
    const start = Math.atan2(v.at.y - cy, v.at.x - cx);
    const steps = Math.max(2, Math.ceil((Math.abs(angle) / (2 * Math.PI)) * ARC_STEPS));
    for (let k = 1; k < steps; k++) {
      const a = start + (angle * k) / steps;
      points.push({ x: cx + radius * Math.cos(a), y: cy + radius * Math.sin(a) });
    }
  });
  return points;
}

function arc(pairs: readonly Pair[], whole: boolean): { points: Point[]; closed: boolean } {
  const centre = pointOf(pairs);
  const radius = coordinate(pairs, 40);
  const from = whole ? 0 : (coordinate(pairs, 50) * Math.PI) / 180;
  let to = whole ? 2 * Math.PI : (coordinate(pairs, 51) * Math.PI) / 180;
  if (to <= from) to += 2 * Math.PI;
  const steps = Math.max(
    8,
    Math.min(4 * ARC_STEPS, Math.ceil(((to - from) / (2 * Math.PI)) * 4 * ARC_STEPS)),
  );
  const points: Point[] = [];
  for (let k = 0; k < steps + (whole ? 0 : 1); k++) {
    const a = from + ((to - from) * k) / steps;
    points.push({ x: centre.x + radius * Math.cos(a), y: centre.y + radius * Math.sin(a) });
  }
  return { points, closed: whole };
}

function lightPolyline(pairs: readonly Pair[]): { at: Point; bulge: number }[] {
  const vertices: { at: Point; bulge: number }[] = [];
  for (const pair of pairs) {
    if (pair.code === 10) vertices.push({ at: { x: number(pair), y: 0 }, bulge: 0 });
    const last = vertices.at(-1);
    if (!last) continue;
    if (pair.code === 20) vertices[vertices.length - 1] = { ...last, at: { x: last.at.x, y: number(pair) } };
    if (pair.code === 42) vertices[vertices.length - 1] = { ...last, bulge: number(pair) };
  }
  return vertices;
}

/** One entity's own pairs: from after its `0 KIND` to before the next `0`. */
interface Raw {
  readonly kind: string;
  readonly pairs: readonly Pair[];
  readonly line: number;
}

function raws(pairs: readonly Pair[], from: number, to: number): Raw[] {
  const found: Raw[] = [];
  let i = from;
  while (i < to) {
    const head = pairs[i]!;
    let end = i + 1;
    while (end < to && pairs[end]!.code !== 0) end++;
    if (head.code === 0)
      found.push({ kind: head.value.toUpperCase(), pairs: pairs.slice(i + 1, end), line: head.line });
    i = end;
  }
  return found;
}

const SILENT = new Set(['SEQEND', 'VERTEX', 'ATTDEF', 'ATTRIB', 'VIEWPORT']);

function entities(list: readonly Raw[], skipped: Map<string, number>, budget: { points: number }): Entity[] {
  const out: Entity[] = [];
  const spend = (points: readonly unknown[], line: number) => {
    budget.points -= points.length;
    if (budget.points < 0) throw new DxfError('the file has too many points to read', line);
  };
  for (let i = 0; i < list.length; i++) {
    const { kind, pairs, line } = list[i]!;
    const layer = layerOf(pairs);
    if (kind === 'POLYLINE') {
      const closed = (coordinate(pairs, 70) & 1) === 1;
      const vertices: { at: Point; bulge: number }[] = [];
      while (list[i + 1]?.kind === 'VERTEX') {
        const v = list[++i]!;
        vertices.push({ at: pointOf(v.pairs), bulge: coordinate(v.pairs, 42) });
      }
      const points = bulged(vertices, closed);
      spend(points, line);
      if (points.length > 1) out.push({ kind: 'line', layer, points, closed });
    } else if (kind === 'LWPOLYLINE') {
      const closed = (coordinate(pairs, 70) & 1) === 1;
      const points = bulged(lightPolyline(pairs), closed);
      spend(points, line);
      if (points.length > 1) out.push({ kind: 'line', layer, points, closed });
    } else if (kind === 'LINE') {
      spend([0, 0], line);
      out.push({ kind: 'line', layer, points: [pointOf(pairs), pointOf(pairs, 11)], closed: false });
    } else if (kind === 'ARC' || kind === 'CIRCLE') {
      const { points, closed } = arc(pairs, kind === 'CIRCLE');
      spend(points, line);
      out.push({ kind: 'line', layer, points, closed });
    } else if (kind === 'POINT') {
      spend([0], line);
      out.push({ kind: 'point', layer, at: pointOf(pairs) });
    } else if (kind === 'TEXT' || kind === 'MTEXT') {
      const parts = pairs.filter((p) => p.code === 3 || p.code === 1).map((p) => p.value);
      out.push({ kind: 'text', layer, at: pointOf(pairs), text: parts.join('') });
    } else if (kind === 'INSERT') {
      out.push({ kind: 'insert', layer, block: field(pairs, 2)?.value ?? '' });
    } else if (!SILENT.has(kind)) {
      skipped.set(kind, (skipped.get(kind) ?? 0) + 1);
    }
  }
  return out;
}

/** Sections of a DXF file into header variables, blocks and entities. Throws DxfError with a line. */
export function readEntities(pairs: readonly Pair[]): DxfFile {
  const header = new Map<string, string>();
  const blocks: Block[] = [];
  const loose: Entity[] = [];
  const skipped = new Map<string, number>();
  const budget = { points: DXF_BOUNDS.points };
  let i = 0;
  let sections = 0;
  while (i < pairs.length) {
    if (!(pairs[i]!.code === 0 && pairs[i]!.value.toUpperCase() === 'SECTION')) {
      i++;
      continue;
    }
    sections++;
    const name = pairs[i + 1]?.value.toUpperCase() ?? '';
    let end = i + 2;
    while (end < pairs.length && !(pairs[end]!.code === 0 && pairs[end]!.value.toUpperCase() === 'ENDSEC'))
      end++;
    if (name === 'HEADER') {
      for (let k = i + 2; k + 1 < end; k++) {
        if (pairs[k]!.code === 9) header.set(pairs[k]!.value, pairs[k + 1]!.value);
      }
    } else if (name === 'BLOCKS') {
      const list = raws(pairs, i + 2, end);
      for (let k = 0; k < list.length; k++) {
        if (list[k]!.kind !== 'BLOCK') continue;
        const from = k + 1;
        while (k + 1 < list.length && list[k + 1]!.kind !== 'ENDBLK') k++;
        const block = list[from - 1]!;
        blocks.push({
          name: field(block.pairs, 2)?.value ?? '',
          entities: entities(list.slice(from, k + 1), skipped, budget),
        });
      }
    } else if (name === 'ENTITIES') {
      loose.push(...entities(raws(pairs, i + 2, end), skipped, budget));
    }
    i = end + 1;
  }
  if (sections === 0) throw new DxfError('no section was found: is this a DXF file?', 0);
  return { header, blocks, entities: loose, skipped };
}
