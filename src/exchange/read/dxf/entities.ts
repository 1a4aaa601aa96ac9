import { REFUSAL_WORDS as NO } from '../../words/refusal-table.ts';
import type { Point } from '../../../geometry/index.ts';
import { DXF_BOUNDS, DxfError, type Pair } from './pairs.ts';
import { penOf, readTables, type DxfPen, type DxfTables } from './pens.ts';
import { field, fields, number, numberOf, raws, type Raw } from './raw.ts';
import { splinePoints, splineThrough } from './spline.ts';

/** A drawn thing of a DXF file, coordinates in the file's own units. */
export type Entity =
  | {
      readonly kind: 'line';
      readonly layer: string;
      readonly points: readonly Point[];
      readonly closed: boolean;
      readonly pen: DxfPen;
    }
  | { readonly kind: 'point'; readonly layer: string; readonly at: Point }
  | {
      readonly kind: 'text';
      readonly layer: string;
      readonly at: Point;
      readonly text: string;
      /** Height of its letters, 0 where the file has none. */
      readonly height: number;
      /** Radians. */
      readonly angle: number;
    }
  | {
      readonly kind: 'insert';
      readonly layer: string;
      readonly block: string;
      readonly at: Point;
      readonly scale: Point;
      /** Radians. */
      readonly angle: number;
      /** All of it turned over, x to the other side. */
      readonly over: boolean;
      /** Repeated in rows: how many across and up, and how far apart, along the insert's own turn; not scaled with it. */
      readonly rows: { readonly across: number; readonly up: number; readonly apart: Point };
    };

export interface Block {
  readonly name: string;
  /** The point of it that an insert puts in its place. */
  readonly base: Point;
  readonly entities: readonly Entity[];
}

export interface DxfFile {
  readonly header: ReadonlyMap<string, string>;
  readonly blocks: readonly Block[];
  readonly entities: readonly Entity[];
  /** Kinds of entities that were met and not read, with how many. */
  readonly skipped: ReadonlyMap<string, number>;
  readonly tables: DxfTables;
}

/** Chords of a whole circle: of 300 mm radius they are off by less than 0.006 mm. */
const ARC_STEPS = 512;

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

/** Chords for so much of a turn, radians. */
const arcSteps = (turn: number): number =>
  Math.max(8, Math.min(ARC_STEPS, Math.ceil((turn / (2 * Math.PI)) * ARC_STEPS)));

function arc(pairs: readonly Pair[], whole: boolean): { points: Point[]; closed: boolean } {
  const centre = pointOf(pairs);
  const radius = coordinate(pairs, 40);
  const from = whole ? 0 : (coordinate(pairs, 50) * Math.PI) / 180;
  let to = whole ? 2 * Math.PI : (coordinate(pairs, 51) * Math.PI) / 180;
  if (to <= from) to += 2 * Math.PI;
  const steps = arcSteps(to - from);
  const points: Point[] = [];
  for (let k = 0; k < steps + (whole ? 0 : 1); k++) {
    const a = from + ((to - from) * k) / steps;
    points.push({ x: centre.x + radius * Math.cos(a), y: centre.y + radius * Math.sin(a) });
  }
  return { points, closed: whole };
}

/** Drawn as seen from below (its direction upwards is −z): what a drawing program makes of a mirrored arc, polyline or block. */
const isOver = (pairs: readonly Pair[]): boolean => coordinate(pairs, 230) < 0;

const turnedOver = (points: readonly Point[]): Point[] => points.map(({ x, y }) => ({ x: -x, y }));

/** Centre, end of the long axis, ratio of the short one, and from where to where (open DXF reference); the short axis lies the other way when seen from below. */
function ellipse(pairs: readonly Pair[]): { points: Point[]; closed: boolean } {
  const centre = pointOf(pairs);
  const long = pointOf(pairs, 11);
  const ratio = coordinate(pairs, 40) * (isOver(pairs) ? -1 : 1);
  const from = coordinate(pairs, 41);
  let to = field(pairs, 42) ? coordinate(pairs, 42) : 2 * Math.PI;
  if (to <= from) to += 2 * Math.PI;
  const closed = to - from > 2 * Math.PI - 1e-6;
  const steps = arcSteps(to - from);
  const points = Array.from({ length: steps + (closed ? 0 : 1) }, (_, k) => {
    const a = from + ((to - from) * k) / steps;
    const [c, s] = [Math.cos(a), Math.sin(a) * ratio];
    return { x: centre.x + c * long.x - s * long.y, y: centre.y + c * long.y + s * long.x };
  });
  return { points, closed };
}

function spline(pairs: readonly Pair[]): { points: Point[]; closed: boolean } | null {
  const pointsOf = (code: number): Point[] => {
    const ys = fields(pairs, code + 10).map(number);
    return fields(pairs, code).map((pair, i) => ({ x: number(pair), y: ys[i] ?? 0 }));
  };
  const controls = pointsOf(10);
  const [start, end] = [pointsOf(12)[0], pointsOf(13)[0]];
  const points =
    controls.length > 0
      ? splinePoints(
          coordinate(pairs, 71),
          fields(pairs, 40).map(number),
          controls,
          fields(pairs, 41).map(number),
        )
      : splineThrough(pointsOf(11), start && end ? [start, end] : null);
  if (!points) return null;
  const [first, last] = [points[0]!, points.at(-1)!];
  const closed = (coordinate(pairs, 70) & 1) === 1 && first.x === last.x && first.y === last.y;
  return { points: closed ? points.slice(0, -1) : points, closed };
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

/** Flags of the open DXF reference: a vertex of a frame; a polyline that is a mesh in space. */
const FRAME = 16;
const MESH = 16 | 64;

const SILENT = new Set(['SEQEND', 'VERTEX', 'ATTDEF', 'ATTRIB', 'VIEWPORT']);

function entities(
  list: readonly Raw[],
  skipped: Map<string, number>,
  budget: { points: number },
  tables: DxfTables,
): Entity[] {
  const out: Entity[] = [];
  const spend = (points: readonly unknown[], line: number) => {
    budget.points -= points.length;
    if (budget.points < 0) throw new DxfError(NO['dxf-points']({ blocks: false }), line);
  };
  const skip = (kind: string): void => void skipped.set(kind, (skipped.get(kind) ?? 0) + 1);
  for (let i = 0; i < list.length; i++) {
    const raw = list[i]!;
    const { kind, pairs, line } = raw;
    const layer = layerOf(pairs);
    const draw = ({ points, closed }: { points: readonly Point[]; closed: boolean }): void => {
      spend(points, line);
      if (points.length > 1)
        out.push({ kind: 'line', layer, points, closed, pen: penOf(raw, layer, tables) });
    };
    const over = isOver(pairs);
    /** Of kinds whose coordinates are those of their own plane. */
    const drawInPlane = ({ points, closed }: { points: readonly Point[]; closed: boolean }): void =>
      draw({ points: over ? turnedOver(points) : points, closed });
    if (kind === 'POLYLINE') {
      const flags = coordinate(pairs, 70);
      const closed = (flags & 1) === 1;
      const vertices: { at: Point; bulge: number }[] = [];
      while (list[i + 1]?.kind === 'VERTEX') {
        const v = list[++i]!;
        // The frame that a smoothed polyline was drawn by is no part of it.
        if ((coordinate(v.pairs, 70) & FRAME) === 0)
          vertices.push({ at: pointOf(v.pairs), bulge: coordinate(v.pairs, 42) });
      }
      if ((flags & MESH) !== 0) skip(kind);
      else drawInPlane({ points: bulged(vertices, closed), closed });
    } else if (kind === 'LWPOLYLINE') {
      const closed = (coordinate(pairs, 70) & 1) === 1;
      drawInPlane({ points: bulged(lightPolyline(pairs), closed), closed });
    } else if (kind === 'LINE') {
      draw({ points: [pointOf(pairs), pointOf(pairs, 11)], closed: false });
    } else if (kind === 'ARC' || kind === 'CIRCLE') {
      drawInPlane(arc(pairs, kind === 'CIRCLE'));
    } else if (kind === 'ELLIPSE') {
      draw(ellipse(pairs));
    } else if (kind === 'SPLINE') {
      const drawn = spline(pairs);
      if (drawn) draw(drawn);
      else skip(kind);
    } else if (kind === 'POINT') {
      spend([0], line);
      out.push({ kind: 'point', layer, at: pointOf(pairs) });
    } else if (kind === 'TEXT' || kind === 'MTEXT') {
      const parts = pairs.filter((p) => p.code === 3 || p.code === 1).map((p) => p.value);
      const turn = (coordinate(pairs, 50) * Math.PI) / 180;
      const mirrored = over && kind === 'TEXT';
      out.push({
        kind: 'text',
        layer,
        at: mirrored ? turnedOver([pointOf(pairs)])[0]! : pointOf(pairs),
        text: parts.join(''),
        height: coordinate(pairs, 40),
        angle: mirrored ? Math.PI - turn : turn,
      });
    } else if (kind === 'INSERT') {
      out.push({
        kind: 'insert',
        layer,
        block: field(pairs, 2)?.value ?? '',
        at: pointOf(pairs),
        scale: { x: numberOf(field(pairs, 41), 1), y: numberOf(field(pairs, 42), 1) },
        angle: (coordinate(pairs, 50) * Math.PI) / 180,
        over,
        rows: {
          across: timesOf(field(pairs, 70)),
          up: timesOf(field(pairs, 71)),
          apart: { x: coordinate(pairs, 44), y: coordinate(pairs, 45) },
        },
      });
    } else if (!SILENT.has(kind)) {
      skip(kind);
    }
  }
  return out;
}

/** How many times: at least once. */
const timesOf = (pair: Pair | undefined): number => Math.max(1, Math.floor(numberOf(pair, 1)) || 1);

/** Sections of a DXF file into header variables, blocks and entities. Throws DxfError with a line. */
export function readEntities(pairs: readonly Pair[]): DxfFile {
  const header = new Map<string, string>();
  const blocks: Block[] = [];
  const loose: Entity[] = [];
  const skipped = new Map<string, number>();
  const budget = { points: DXF_BOUNDS.points };
  let tables: DxfTables = { layers: new Map(), types: new Map() };
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
    } else if (name === 'TABLES') {
      tables = readTables(raws(pairs, i + 2, end));
    } else if (name === 'BLOCKS') {
      const list = raws(pairs, i + 2, end);
      for (let k = 0; k < list.length; k++) {
        if (list[k]!.kind !== 'BLOCK') continue;
        const from = k + 1;
        while (k + 1 < list.length && list[k + 1]!.kind !== 'ENDBLK') k++;
        const block = list[from - 1]!;
        blocks.push({
          name: field(block.pairs, 2)?.value ?? '',
          base: pointOf(block.pairs),
          entities: entities(list.slice(from, k + 1), skipped, budget, tables),
        });
      }
    } else if (name === 'ENTITIES') {
      loose.push(...entities(raws(pairs, i + 2, end), skipped, budget, tables));
    }
    i = end + 1;
  }
  if (sections === 0) throw new DxfError(NO['dxf-no-section']());
  return { header, blocks, entities: loose, skipped, tables };
}
