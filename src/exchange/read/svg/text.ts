import { affineAfter, affinePoint } from '../../drawing/affine.ts';
import type { Affine } from '../../drawing/affine.ts';
import type { Budget } from '../../drawing/budget.ts';
import type { DrawnText } from '../../drawing/drawing.ts';
import type { Style } from './style.ts';
import { readDeclarations } from './style.ts';
import type { SvgNode } from './tree.ts';
import { svgNumbers, svgPx } from './units.ts';

/** Letters are taken as this wide in share of their height, where only an estimate is needed. */
const LETTER = 0.55;

/** The lines of one text element: a new one wherever a span has a place of its own. */
export function textsOf(
  node: SvgNode,
  matrix: Affine,
  style: Style,
  budget: Budget,
): Omit<DrawnText, 'page' | 'layer' | 'belongs'>[] {
  const lines: { x: number; y: number; size: number; anchor: string; text: string }[] = [];
  const visit = (at: SvgNode, size: number, anchor: string, depth: number): void => {
    budget.spend('operations', 1);
    budget.depth(depth);
    const own = at === node ? style : readDeclarations(at.attributes['style'] ?? '');
    const fontSize = svgPx(own['font-size'] ?? at.attributes['font-size'], size);
    const align = own['text-anchor'] ?? at.attributes['text-anchor'] ?? anchor;
    const x = svgNumbers(at.attributes['x'])[0];
    const y = svgNumbers(at.attributes['y'])[0];
    const last = lines.at(-1);
    if (!last || x !== undefined || y !== undefined) {
      lines.push({ x: x ?? last?.x ?? 0, y: y ?? last?.y ?? 0, size: fontSize, anchor: align, text: '' });
    }
    for (const child of at.children) {
      if (typeof child === 'string') lines.at(-1)!.text += child;
      else if (child.name === 'tspan' || child.name === 'textPath') visit(child, fontSize, align, depth + 1);
    }
  };
  visit(node, svgPx(style['font-size'], 16), style['text-anchor'] ?? 'start', 0);
  return lines
    .map((line) => ({ ...line, text: line.text.replace(/\s+/g, ' ').trim() }))
    .filter((line) => line.text)
    .map((line) => {
      const wide = line.text.length * line.size * LETTER;
      const shift = line.anchor === 'middle' ? wide / 2 : line.anchor === 'end' ? wide : 0;
      const placed = affineAfter(matrix, [1, 0, 0, 1, line.x - shift, line.y]);
      return {
        text: line.text,
        at: affinePoint(placed, { x: 0, y: 0 }),
        size: line.size * Math.hypot(matrix[2], matrix[3]),
        angle: Math.atan2(matrix[1], matrix[0]),
        width: wide * Math.hypot(matrix[0], matrix[1]),
      };
    });
}
