import { drawLay } from './lay-drawing.ts';
import { drawingPaths } from './lay-svg.ts';
import type { Lay, LayJob } from './lay-job.ts';

/** Side of the calibration squares, mm: metric and inch rulers can both check it at 500 mm and 20 in. */
const GRID_MM = 100;

const LINE = 'stroke="#fff" stroke-width="2.5"';

function page(width: number, height: number, body: readonly string[], title: string): string {
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}mm" height="${height}mm" viewBox="0 0 ${width} ${height}">`,
    `<title>${title}</title>`,
    `<rect width="${width}" height="${height}" fill="#000"/>`,
    ...body,
    '</svg>',
    '',
  ].join('\n');
}

/**
 * Two pages for a projector, white on black. The first calibrates: a grid whose squares must measure 100 mm and whose diagonals must be equal
 * (else the throw is not square to the table). The second is the lay on one sheet: cutting lines, grain and folds, nothing else.
 */
export function projectorPages(job: LayJob, lay: Lay): { calibration: string; lay: string } {
  const drawing = drawLay(job, lay);
  const w = Math.ceil(drawing.width / GRID_MM) * GRID_MM;
  const h = Math.ceil(drawing.height / GRID_MM) * GRID_MM;
  const grid: string[] = [];
  for (let x = 0; x <= w; x += GRID_MM) grid.push(`<path d="M${x} 0V${h}" ${LINE} fill="none"/>`);
  for (let y = 0; y <= h; y += GRID_MM) grid.push(`<path d="M0 ${y}H${w}" ${LINE} fill="none"/>`);
  const side = Math.min(w, h, 500);
  grid.push(
    `<path d="M0 0L${side} ${side}M${side} 0L0 ${side}" ${LINE} fill="none" stroke-dasharray="12 8"/>`,
    `<text x="12" y="40" font-size="24" fill="#fff" font-family="sans-serif">Each square 100 mm (3 15/16 in); both dashed lines equally long</text>`,
  );
  const style = (layer: string): string =>
    layer === 'GRAIN'
      ? 'stroke="#fff" stroke-width="1.2"'
      : layer === 'FOLD'
        ? `${LINE} stroke-dasharray="30 10"`
        : LINE;
  return {
    calibration: page(w, h, grid, 'Calibration'),
    lay: page(Math.ceil(drawing.width), Math.ceil(drawing.height), drawingPaths(drawing, style), 'Lay'),
  };
}
