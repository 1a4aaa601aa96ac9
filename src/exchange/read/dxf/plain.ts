import { REFUSAL_WORDS as NO } from '../../words/refusal-table.ts';
import { EVIDENCE_WORDS as SAY } from '../../words/evidence-table.ts';
import { exchangeFinding } from '../../words/words-table.ts';
import { boxAround, pointsBox, polylinePath, type Point } from '../../../geometry/index.ts';
import type { Finding } from '../../../garment/index.ts';
import { affineAfter, affinePoint, affineScale, type Affine } from '../../drawing/affine.ts';
import { READ_LIMITS } from '../../drawing/budget.ts';
import type { DrawnText, Drawing, Stroke } from '../../drawing/drawing.ts';
import type { DxfFile, Entity } from './entities.ts';
import { DXF_BOUNDS, DxfError } from './pairs.ts';
import { MM, units, type DxfStyle } from './style.ts';

/** Blocks within blocks are followed this deep. */
const DEEPEST = 8;
/** Width of a line that says none, mm. */
const THIN_MM = 0.25;
/** Half-width of a letter, in heights. */
const LETTER = 0.6;

/**
 * A DXF that any drawing program wrote: its lines, words and layers, blocks put where they are inserted. Which of them are pieces is looked for
 * as in any other drawing. Throws DxfError where there is nothing drawn, or blocks hold too much.
 */
export function plainDrawing(file: DxfFile, name: string): Drawing {
  const { units: unit, from } = units(file, []);
  const blocks = new Map(file.blocks.map((block) => [block.name, block]));
  const strokes: Stroke[] = [];
  const texts: DrawnText[] = [];
  let points = 0;
  const spend = (more: number): void => {
    points += more;
    if (points > DXF_BOUNDS.points) throw new DxfError(NO['dxf-points']({ blocks: true }));
  };
  const place = (entities: readonly Entity[], at: Affine, depth: number, layer: string | null): void => {
    for (const one of entities) {
      // Words and inserts count too: blocks of nothing but inserts would else multiply without end.
      spend(one.kind === 'line' ? one.points.length : 1);
      // What lies on layer 0 of a block takes the layer of the insert.
      const on = one.layer === '0' && layer !== null ? layer : one.layer;
      if (one.kind === 'line') {
        if (strokes.length >= READ_LIMITS.strokes)
          throw new DxfError(NO['dxf-lines']({ most: READ_LIMITS.strokes }));
        const moved = one.points.map((point) => affinePoint(at, point));
        strokes.push({
          page: 0,
          path: polylinePath(one.closed ? [...moved, moved[0]!] : moved),
          closed: one.closed || closes(moved),
          colour: one.pen.colour,
          width: one.pen.weight > 0 ? one.pen.weight / 100 : THIN_MM,
          dash: one.pen.dash.map((long) => long * affineScale(at)),
          layer: on,
          paint: 'line',
        });
      } else if (one.kind === 'text') {
        const size = one.height * affineScale(at);
        const text = one.text.replaceAll(/\\[A-Za-z][^;\\]*;|[{}]|\\P/g, ' ').trim();
        texts.push({
          page: 0,
          text,
          at: affinePoint(at, one.at),
          size,
          angle: one.angle + Math.atan2(at[1], at[0]),
          width: text.length * size * LETTER,
          layer: on,
        });
      } else if (one.kind === 'insert' && depth < DEEPEST) {
        const block = blocks.get(one.block);
        if (!block) continue;
        spend(one.rows.across * one.rows.up);
        for (const copy of copies(one))
          place(block.entities, affineAfter(at, insertMatrix(copy, block.base)), depth + 1, on);
      }
    }
  };
  const k = MM[unit];
  place(file.entities, [k, 0, 0, k, 0, 0], 0, null);
  if (strokes.length === 0) throw new DxfError(NO['dxf-no-line']());
  const box = boxAround(strokes.map((stroke) => pointsBox(stroke.path)));
  if (!Number.isFinite(box.maxX - box.minX + box.maxY - box.minY)) throw new DxfError(NO['dxf-far']());
  const used = new Set(strokes.map((stroke) => stroke.layer));
  return {
    format: 'dxf',
    name,
    pages: [{ number: 1, width: box.maxX - box.minX, height: box.maxY - box.minY }],
    strokes,
    texts,
    layers: [...used].map((layer) => ({
      name: layer,
      visible: file.tables.layers.get(layer)?.shown ?? true,
    })),
    unitsFrom: SAY['units-of-dxf']({ from }),
    findings: [...doubts(from, box.maxX - box.minX, box.maxY - box.minY), ...notRead(file)],
  };
}

const closes = (points: readonly Point[]): boolean =>
  points.length > 3 && Math.hypot(points[0]!.x - points.at(-1)!.x, points[0]!.y - points.at(-1)!.y) < 1e-6;

type Insert = Extract<Entity, { kind: 'insert' }>;

/** The places of an insert that is repeated in rows (open DXF reference: columns and rows go along the insert's own turn). */
function* copies(one: Insert): Generator<Insert> {
  const { across, up, apart } = one.rows;
  const [c, s] = [Math.cos(one.angle), Math.sin(one.angle)];
  for (let row = 0; row < up; row++) {
    for (let column = 0; column < across; column++) {
      const [x, y] = [column * apart.x, row * apart.y];
      yield { ...one, at: { x: one.at.x + c * x - s * y, y: one.at.y + s * x + c * y } };
    }
  }
}

/** Moves the block's base to the insert's place, scaled and turned. */
function insertMatrix(one: Insert, base: Point): Affine {
  const [c, s] = [Math.cos(one.angle), Math.sin(one.angle)];
  const turned: Affine = [
    c * one.scale.x,
    s * one.scale.x,
    -s * one.scale.y,
    c * one.scale.y,
    one.at.x,
    one.at.y,
  ];
  const put = affineAfter(turned, [1, 0, 0, 1, -base.x, -base.y]);
  return one.over ? affineAfter([-1, 0, 0, 1, 0, 0], put) : put;
}

function doubts(from: DxfStyle['unitsFrom'], wide: number, high: number): Finding[] {
  const found: Finding[] = [];
  if (from === 'assumed') found.push(exchangeFinding('units-assumed', 'warning', {}, { taken: 'mm' }));
  const long = Math.max(wide, high);
  if (long < 100 || long > 20_000)
    found.push(exchangeFinding('units-doubtful', 'warning', {}, { long, piece: false }));
  return found;
}

const notRead = (file: DxfFile): Finding[] =>
  [...file.skipped].map(([kind, count]) => exchangeFinding('dxf-not-read', 'note', {}, { kind, count }));
