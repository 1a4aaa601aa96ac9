import { ringContains } from '../../geometry/index.ts';
import type { Ring } from '../../geometry/index.ts';
import type { Cloth } from '../../garment/index.ts';
import type { DrawnText } from '../drawing/drawing.ts';

export interface PieceLabel {
  readonly name: string;
  readonly cloth: Cloth;
  readonly cut: { readonly count: number; readonly mirrored: boolean };
  readonly onFold: boolean;
  readonly words: readonly string[];
  readonly evidence: string;
}

/** Words that stand on pieces without being their names. */
const NOT_A_NAME =
  /\b(cut\b|fold\b|grain|\blength\b|lengthen|shorten|size|page|tile|mm\b|cm\b|inch|square|test|scale|place|notch|dart\b|allowance|copyright|©|row\b|column|here\b|x\s*\d)/i;

/** Names of body levels stand beside their lines. */
const LEVEL =
  /^(?:upper |under |high )?-?(?:bust|chest|waist|hip|arm|elbow|wrist|knee|crotch|thigh|hem)(?: ?line| level)?$/i;

/** Reads the words that stand inside a piece, in any of its sizes: its name (the largest that names something), how many to cut, of what, on the fold or not. */
export function readLabel(rings: readonly Ring[], texts: readonly DrawnText[]): PieceLabel {
  const inside = texts.filter((text) => rings.some((ring) => ringContains(ring, middle(text))));
  const words = inside.map((text) => text.text);
  const all = words.join(' \n ');
  const names = inside
    .filter(
      (text) => /\p{L}{3,}/u.test(text.text) && !NOT_A_NAME.test(text.text) && !LEVEL.test(text.text.trim()),
    )
    .toSorted((a, b) => b.size - a.size || b.at.y - a.at.y || a.at.x - b.at.x);
  const largest = names[0];
  // A name set in two lines of one height belongs together.
  const lines = largest
    ? names
        .filter((text) => Math.abs(text.size - largest.size) < 0.3 && Math.abs(text.at.x - largest.at.x) < 60)
        .slice(0, 2)
    : [];
  const name = lines
    .map((text) => text.text)
    .join(' ')
    .replace(/^\d{1,2}\s*[.:)–-]?\s+/, '')
    .trim();
  const count =
    /\bcut\s*(\d{1,2})/i.exec(all) ?? /\b(\d{1,2})\s*x\b/i.exec(all) ?? /\bx\s*(\d{1,2})\b/i.exec(all);
  const onFold = /\bfold\b/i.test(all);
  const pair = /mirror|pair/i.test(all);
  // “Cut 2” is taken for a left and a right one.
  const alike = !pair && /\balike\b/i.test(all);
  const n = Math.min(20, Math.max(1, Number(count?.[1] ?? (onFold ? 1 : 2))));
  return {
    name,
    cloth: /\blining\b/i.test(all)
      ? 'lining'
      : /interfac|fusible/i.test(all) && !/\bshell|fabric|cloth\b/i.test(all)
        ? 'interfacing'
        : /\bcontrast\b/i.test(all)
          ? 'contrast'
          : 'shell',
    cut: { count: n, mirrored: n % 2 === 0 && !alike && (pair || !onFold) },
    onFold,
    words,
    evidence: name
      ? `named by the words on it: “${name}”${count ? `, “${count[0].trim()}”` : ''}`
      : 'no words on it',
  };
}

function middle(text: DrawnText): { x: number; y: number } {
  return {
    x: text.at.x + (Math.cos(text.angle) * text.width) / 2 - (Math.sin(text.angle) * text.size) / 3,
    y: text.at.y + (Math.sin(text.angle) * text.width) / 2 + (Math.cos(text.angle) * text.size) / 3,
  };
}
