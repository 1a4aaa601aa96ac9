import { MM_PER } from '../../../garment/index.ts';
import { STAY, affineAfter } from '../../drawing/affine.ts';
import type { Affine } from '../../drawing/affine.ts';

/** User units (CSS px, 96 to the inch) in one unit of each name (CSS Values 3, section 6.2; memory). */
const PX: Readonly<Record<string, number>> = {
  '': 1,
  px: 1,
  in: 96,
  cm: 96 / 2.54,
  mm: 96 / MM_PER.in,
  q: 96 / 101.6,
  pt: 96 / 72,
  pc: 16,
  em: 16,
  ex: 8,
};

export const MM_PER_PX = MM_PER.in / 96;

export interface SvgLength {
  readonly px: number;
  readonly unit: string;
}

/** A length with its unit, or null for percentages and nonsense. */
export function svgLength(text: string | undefined): SvgLength | null {
  const m = /^\s*([+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?)\s*([a-z]*)\s*$/i.exec(text ?? '');
  if (!m) return null;
  const unit = m[2]!.toLowerCase();
  const factor = PX[unit];
  const value = Number(m[1]);
  return factor === undefined || !Number.isFinite(value) ? null : { px: value * factor, unit };
}

export const svgPx = (text: string | undefined, otherwise = 0): number => svgLength(text)?.px ?? otherwise;

export function svgNumbers(text: string | undefined): number[] {
  return (text?.match(/[+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?/gi) ?? []).map(Number).filter(Number.isFinite);
}

/** A `transform` attribute as one matrix; unknown parts leave it as it stands. */
export function svgTransform(text: string | undefined): Affine {
  let matrix = STAY;
  for (const m of (text ?? '').matchAll(/(\w+)\s*\(([^)]*)\)/g)) {
    const n = svgNumbers(m[2]);
    const [a = 0, b, c] = n;
    let step: Affine = STAY;
    switch (m[1]) {
      case 'matrix':
        if (n.length === 6) step = n as unknown as Affine;
        break;
      case 'translate':
        step = [1, 0, 0, 1, a, b ?? 0];
        break;
      case 'scale':
        step = [a, 0, 0, b ?? a, 0, 0];
        break;
      case 'rotate': {
        const turn = (a * Math.PI) / 180;
        const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
        const rotate: Affine = [cos, sin, -sin, cos, 0, 0];
        const [x, y] = [b ?? 0, c ?? 0];
        step = affineAfter([1, 0, 0, 1, x, y], affineAfter(rotate, [1, 0, 0, 1, -x, -y]));
        break;
      }
      case 'skewX':
        step = [1, 0, Math.tan((a * Math.PI) / 180), 1, 0, 0];
        break;
      case 'skewY':
        step = [1, Math.tan((a * Math.PI) / 180), 0, 1, 0, 0];
        break;
    }
    matrix = affineAfter(matrix, step);
  }
  return matrix;
}

/** Fits a view box into a width and height as `preserveAspectRatio` says (default: whole, centred). */
export function viewBoxFit(
  viewBox: string | undefined,
  ratio: string | undefined,
  width: number,
  height: number,
): Affine {
  const [x, y, w, h] = svgNumbers(viewBox);
  if (x === undefined || y === undefined || !(w! > 0) || !(h! > 0) || !(width > 0) || !(height > 0))
    return STAY;
  let sx = width / w!;
  let sy = height / h!;
  const how = ratio ?? '';
  if (/none/.test(how)) return [sx, 0, 0, sy, -x * sx, -y * sy];
  sx = sy = /slice/.test(how) ? Math.max(sx, sy) : Math.min(sx, sy);
  const place = (axis: 'x' | 'Y', room: number): number =>
    new RegExp(`${axis}Min`).test(how) ? 0 : new RegExp(`${axis}Max`).test(how) ? room : room / 2;
  return [sx, 0, 0, sy, place('x', width - w! * sx) - x * sx, place('Y', height - h! * sy) - y * sy];
}
