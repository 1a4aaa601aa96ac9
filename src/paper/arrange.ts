import type { Figure, Sheet } from './drawing.ts';
import { moveFigure } from './move-figure.ts';

/** White between two figures: enough to run the shears between them. */
export const GAP_MM = 10;

interface Step {
  /** Where this run of the skyline starts, how wide it is, and how far down it is filled. */
  x: number;
  width: number;
  y: number;
}

/** A figure's size with its white. */
const size = (f: Figure): { width: number; height: number } => ({
  width: f.box.maxX - f.box.minX + GAP_MM,
  height: f.box.maxY - f.box.minY + GAP_MM,
});

/** One sheet being filled from its top, remembered as the skyline of what is taken. */
class Filling {
  readonly steps: Step[];
  readonly placed: { figure: Figure; x: number; y: number }[] = [];
  bottom = 0;
  private readonly width: number;
  private readonly height: number;

  constructor(width: number, height: number) {
    this.width = width;
    this.height = height;
    this.steps = [{ x: 0, width, y: 0 }];
  }

  /** Highest place, then leftmost, where the figure fits; false if there is none. */
  take(figure: Figure): boolean {
    const { width, height } = size(figure);
    let best: { i: number; x: number; y: number } | undefined;
    for (let i = 0; i < this.steps.length; i++) {
      const x = this.steps[i]!.x;
      if (x + width > this.width + 1e-6) break;
      let y = 0;
      for (let k = i; k < this.steps.length && this.steps[k]!.x < x + width - 1e-6; k++) {
        y = Math.max(y, this.steps[k]!.y);
      }
      if (y + height > this.height + 1e-6) continue;
      if (!best || y < best.y - 1e-6) best = { i, x, y };
    }
    if (!best) return false;
    this.placed.push({ figure, x: best.x, y: best.y });
    this.bottom = Math.max(this.bottom, best.y + height);
    this.fill(best.i, best.x, width, best.y + height);
    return true;
  }

  private fill(i: number, x: number, width: number, y: number): void {
    const after: Step[] = [];
    for (const step of this.steps.slice(i)) {
      const end = step.x + step.width;
      if (end <= x + width + 1e-6) continue;
      const start = Math.max(step.x, x + width);
      after.push({ x: start, width: end - start, y: step.y });
    }
    this.steps.splice(i, this.steps.length - i, { x, width, y }, ...after);
  }
}

/** Where a figure goes: by how much it moves on a sheet of that height. */
export interface Placed {
  readonly figure: Figure;
  readonly dx: number;
  readonly dy: number;
}

export interface PlacedSheet {
  readonly height: number;
  readonly placed: readonly Placed[];
}

/**
 * Figures laid on sheets `width` mm wide and at most `height` mm high, `GAP_MM` apart, none turned: the grain stays upright. Tall ones first, each in the
 * highest free place of the first sheet that has one (skyline rule; Jylänki, A thousand ways to pack the bin, 2010). A figure wider or higher than
 * the sheet is the caller's news: throws a RangeError.
 */
export function placeFigures(figures: readonly Figure[], width: number, height: number): PlacedSheet[] {
  const fillings: Filling[] = [];
  const byHeight = figures
    .map((figure, i) => ({ figure, i, ...size(figure) }))
    .sort((a, b) => b.height - a.height || b.width - a.width || a.i - b.i);
  for (const { figure } of byHeight) {
    if (fillings.some((f) => f.take(figure))) continue;
    // The white to the right and below the last figure may lie off the sheet.
    const next = new Filling(width + GAP_MM, height + GAP_MM);
    if (!next.take(figure)) throw new RangeError(`${figure.name} does not fit on ${width} × ${height} mm`);
    fillings.push(next);
  }
  return fillings.map((filling) => {
    const total = filling.bottom - GAP_MM;
    return {
      height: total,
      placed: filling.placed.map(({ figure, x, y }) => ({
        figure,
        dx: x - figure.box.minX,
        dy: total - y - figure.box.maxY,
      })),
    };
  });
}

/** The sheets themselves, every line in its place. */
export function arrange(figures: readonly Figure[], width: number, height: number): Sheet[] {
  return placeFigures(figures, width, height).map((sheet) => ({
    width,
    height: sheet.height,
    figures: sheet.placed.map(({ figure, dx, dy }) => moveFigure(figure, { angle: 0, dx, dy })),
  }));
}

/** White along the border of a sheet, so that no line is cut to half its width there. */
export const BORDER_MM = 2;

/** The sheet with so much white added all round. */
export const withBorder = (sheet: Sheet, by: number): Sheet => ({
  width: sheet.width + 2 * by,
  height: sheet.height + 2 * by,
  figures: sheet.figures.map((f) => moveFigure(f, { angle: 0, dx: by, dy: by })),
});
