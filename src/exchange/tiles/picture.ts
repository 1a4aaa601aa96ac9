import { boxAround, pathMove, pointsBox } from '../../geometry/index.ts';
import type { DrawnText, Drawing, Stroke } from '../drawing/drawing.ts';
import { drawingSvg } from '../write/svg.ts';
import type { Assembly } from './assembly.ts';
import { assemble } from './compose.ts';

const PAPER = '#9a9a9a';

/** The sheet as put together, with every page's outline and number on it: for a person to confirm or correct. SVG text. */
export function assemblyPicture(drawing: Drawing, assembly: Assembly): string {
  const sheet = assemble(drawing, assembly);
  const { window, overlap } = assembly;
  const wide = window.maxX - window.minX;
  const high = window.maxY - window.minY;
  const strokes: Stroke[] = [];
  const texts: DrawnText[] = [];
  for (const { page, column, row } of assembly.cells) {
    const x = column * (wide - overlap.x);
    const y = (assembly.rows - 1 - row) * (high - overlap.y);
    strokes.push({
      page: 0,
      path: pathMove(rectangle(wide, high), { angle: 0, dx: x, dy: y }),
      closed: true,
      colour: PAPER,
      width: 0.6,
      dash: [],
      layer: 'Pages',
      paint: 'line',
    });
    texts.push({
      page: 0,
      text: String(drawing.pages[page]!.number),
      at: { x: x + 6, y: y + high - 26 },
      size: 20,
      angle: 0,
      width: 12,
      layer: 'Pages',
    });
  }
  const box = boxAround([...sheet.strokes, ...strokes].map((stroke) => pointsBox(stroke.path)));
  return drawingSvg({
    ...sheet,
    pages: [
      {
        number: 1,
        width: Math.max(sheet.pages[0]!.width, box.maxX),
        height: Math.max(sheet.pages[0]!.height, box.maxY),
      },
    ],
    strokes: [
      ...strokes,
      ...sheet.strokes.map((stroke) => ({ ...stroke, width: Math.max(stroke.width, 0.6) })),
    ],
    texts: [...texts, ...sheet.texts],
    layers: [{ name: 'Pages', visible: true }, ...sheet.layers],
  });
}

function rectangle(wide: number, high: number): Stroke['path'] {
  const corners = [
    [0, 0],
    [wide, 0],
    [wide, high],
    [0, high],
    [0, 0],
  ] as const;
  return corners.flatMap(([x, y], i) => {
    if (i === 0) return [{ x, y }];
    const [px, py] = corners[i - 1]!;
    return [
      { x: px + (x - px) / 3, y: py + (y - py) / 3 },
      { x: px + ((x - px) * 2) / 3, y: py + ((y - py) * 2) / 3 },
      { x, y },
    ];
  });
}
