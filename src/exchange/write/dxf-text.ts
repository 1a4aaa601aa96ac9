import { MM_PER, timesTurned } from '../../garment/index.ts';
import { notchTeeth } from '../../cut/index.ts';
import type { DrawnPiece, Edge } from '../../garment/index.ts';
import { FLATTEN_MM, pathAt, pathFlatten, type Point, type Ring } from '../../geometry/index.ts';
import { DXF_LAYERS as L } from '../drawing/layer-table.ts';

/** One block to be written: a piece in one size, with its cutting line (allowances included). */
export interface DxfBlockSource {
  readonly piece: DrawnPiece;
  readonly size: string;
  readonly cutting: Ring;
}

export interface DxfSource {
  readonly style: string;
  readonly sampleSize: string;
  readonly units: 'mm' | 'in';
  /** ISO date, handed in so that the same pattern gives the same bytes. */
  readonly on: string;
  readonly blocks: readonly DxfBlockSource[];
}

/** What is written beside an inner line, so that a reader can tell it from the others. */
const LINE_WORDS: Readonly<Record<string, string>> = { adjust: 'lengthen or shorten here' };

type Out = (code: number, value: string | number) => void;

function fixed(value: number): string {
  const text = value.toFixed(6);
  return text === '-0.000000' ? '0.000000' : text;
}

function plain(text: string): string {
  return text.replace(/[\r\n]+/g, ' ').slice(0, 250);
}

function writer(lines: string[]): Out {
  return (code, value) => {
    lines.push(String(code).padStart(3), typeof value === 'number' ? fixed(value) : value);
  };
}

class Pen {
  readonly #out: Out;
  readonly #scale: number;
  constructor(out: Out, scale: number) {
    this.#out = out;
    this.#scale = scale;
  }
  #at(p: Point, code = 10): void {
    this.#out(code, p.x * this.#scale);
    this.#out(code + 10, p.y * this.#scale);
  }
  polyline(layer: number, points: readonly Point[], closed: boolean): void {
    this.#out(0, 'POLYLINE');
    this.#out(8, String(layer));
    this.#out(66, '1');
    this.#at({ x: 0, y: 0 });
    this.#out(70, closed ? '1' : '0');
    for (const p of points) {
      this.#out(0, 'VERTEX');
      this.#out(8, String(layer));
      this.#at(p);
    }
    this.#out(0, 'SEQEND');
    this.#out(8, String(layer));
  }
  line(layer: number, a: Point, b: Point): void {
    this.#out(0, 'LINE');
    this.#out(8, String(layer));
    this.#at(a);
    this.#at(b, 11);
  }
  point(layer: number, p: Point): void {
    this.#out(0, 'POINT');
    this.#out(8, String(layer));
    this.#at(p);
  }
  text(layer: number, p: Point, height: number, text: string): void {
    this.#out(0, 'TEXT');
    this.#out(8, String(layer));
    this.#at(p);
    this.#out(40, height * this.#scale);
    this.#out(1, plain(text));
  }
}

function closedRing(edges: readonly Edge<'one'>[]): Point[] {
  return edges.flatMap((edge) => pathFlatten(edge.path, FLATTEN_MM).slice(0, -1));
}

/** D6673 "QUANTITY: left,right": a mirrored pair is one of each; pieces on the fold are whole, so all count as left. */
function dxfQuantity(piece: DrawnPiece): readonly [number, number] {
  const turned = timesTurned(piece);
  return [piece.worn.length - turned, turned];
}

function dxfBlockName(piece: DrawnPiece, size: string): string {
  const word = (text: string) =>
    text
      .replace(/[^A-Za-z0-9]+/g, '-')
      .replace(/^-|-$/g, '')
      .toUpperCase() || 'X';
  return `${word(piece.id)}_${word(size)}`;
}

function writeBlock(out: Out, pen: Pen, source: DxfBlockSource): void {
  const { piece, size, cutting } = source;
  out(0, 'BLOCK');
  out(8, '1');
  out(2, dxfBlockName(piece, size));
  out(70, '0');
  out(10, 0);
  out(20, 0);
  const corner = cutting[0] ?? { x: 0, y: 0 };
  const [left, right] = dxfQuantity(piece);
  const lines = [
    `PIECE NAME: ${piece.name}`,
    `SIZE: ${size}`,
    `QUANTITY: ${left},${right}`,
    `MATERIAL: ${piece.cloth}`,
    `CATEGORY: ${piece.id}`,
  ];
  lines.forEach((text, i) => pen.text(L.boundary, { x: corner.x, y: corner.y - 10 * i }, 6, text));
  pen.polyline(L.boundary, cutting, true);
  pen.polyline(L.sew, closedRing(piece.edges), true);
  for (const edge of piece.edges) pen.point(L.turnPoints, edge.path[0]!);
  for (const edge of piece.edges) {
    for (let i = 3; i < edge.path.length - 1; i += 3) pen.point(L.curvePoints, edge.path[i]!);
  }
  for (const edge of piece.edges) {
    for (const notch of edge.notches) {
      for (const { foot } of notchTeeth(edge.path, notch.at, notch.count)) pen.point(L.notches, foot);
    }
    if (edge.kind === 'fold') pen.line(L.mirror, edge.path[0]!, edge.path.at(-1)!);
  }
  for (const line of piece.lines) {
    const layer = line.kind === 'grain' ? L.grain : L.internal;
    if (line.kind === 'fold') continue;
    if (line.path.length === 4 && line.kind === 'grain') pen.line(layer, line.path[0]!, line.path.at(-1)!);
    else pen.polyline(layer, pathFlatten(line.path, FLATTEN_MM), false);
    const words = line.kind === 'level' ? (line.level ?? '').replace('-', ' ') : LINE_WORDS[line.kind];
    if (words) pen.text(L.annotation, pathAt(line.path, 0.5), 3, words);
  }
  for (const mark of piece.marks) {
    pen.point(L.drill, mark.at);
    if (mark.kind !== 'drill') pen.text(L.annotation, mark.at, 3, mark.kind);
  }
  out(0, 'ENDBLK');
  out(8, '1');
}

/**
 * A DXF text (R12 form: blocks, polylines with vertices) by ASTM D6673. Deterministic.
 * What the format cannot hold is listed in DXF_LOSSES.
 */
export function writeDxfText(source: DxfSource): string {
  const lines: string[] = [];
  const out = writer(lines);
  const pen = new Pen(out, source.units === 'mm' ? 1 : 1 / MM_PER.in);
  out(0, 'SECTION');
  out(2, 'HEADER');
  out(9, '$ACADVER');
  out(1, 'AC1009');
  out(0, 'ENDSEC');
  out(0, 'SECTION');
  out(2, 'BLOCKS');
  for (const block of source.blocks) writeBlock(out, pen, block);
  out(0, 'ENDSEC');
  out(0, 'SECTION');
  out(2, 'ENTITIES');
  const style = [
    'ASTM/D6673',
    'AUTHOR: Pintrue',
    `CREATION DATE: ${source.on}`,
    `STYLE NAME: ${source.style}`,
    `SAMPLE SIZE: ${source.sampleSize}`,
    'GRADE RULE TABLE: ',
    `UNITS: ${source.units === 'mm' ? 'METRIC' : 'ENGLISH'}`,
  ];
  style.forEach((text, i) => pen.text(L.boundary, { x: 0, y: -10 * i }, 6, text));
  for (const { piece, size } of source.blocks) {
    out(0, 'INSERT');
    out(8, '1');
    out(2, dxfBlockName(piece, size));
    out(10, 0);
    out(20, 0);
  }
  out(0, 'ENDSEC');
  out(0, 'EOF');
  return lines.join('\r\n') + '\r\n';
}

/** What D6673 has no place for, in words: shown beside every file written. */
export const DXF_LOSSES: readonly string[] = [
  'which edges are sewn together, and with how much ease',
  'names of edges and levels',
  'facings and linings following their parents',
  'curves as curves: they become polylines within 0.01 mm',
  'the size chart and finished measurements',
];
