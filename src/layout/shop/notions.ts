import {
  say,
  edgeAt,
  MM_PER,
  type DrawnPiece,
  type Garment,
  type Seam,
  timesCut,
} from '../../garment/index.ts';
import { pathEnd, pathLength, pathStart } from '../../geometry/index.ts';
import { buttonOverlap, overlapBeyond, widestButton } from './button.ts';

/** What the garment needs besides cloth, from its own edges and marks. */
export interface Notion {
  readonly what: 'zip' | 'fastening' | 'buttons' | 'elastic' | 'binding';
  /** mm, for all but buttons: of the opening, the elastic, the edge. */
  readonly length?: number;
  readonly count?: number;
  readonly say: string;
}

/** Zips are sold in steps of 5 cm (2 in); common practice. The next longer one is bought and shortened. */
const ZIP_STEP_MM = 50;
const ZIP_STEP_INCH_MM = 2 * MM_PER.in;
/** Openings shorter than this close with buttons, hooks or press studs; common practice. mm */
const ZIP_LEAST_MM = 150;

/** The smallest shirt button in common use, mm (common practice). */
const SMALL_BUTTON_MM = 9;

/**
 * Zips from opening edges without buttons and from seams that hold one down to a notch, a fastening for short openings and underlaps, buttons from
 * button marks, binding from free edges of shell pieces that no seam, fold or hem finishes. Facings open with what they face.
 * @param elasticGirths finished girth (mm) of each casing that is to hold elastic, by its name; elastic is cut to it and lapped 25 mm (common practice).
 */
export function notions(garment: Garment, elasticGirths: Readonly<Record<string, number>> = {}): Notion[] {
  const out: Notion[] = [];
  const facings = new Set(garment.followers.filter((f) => f.role === 'facing').map((f) => f.piece));
  for (const piece of garment.pieces.filter((p) => p.cloth === 'shell' && !facings.has(p.id))) {
    const times = timesCut(piece);
    const buttons = piece.marks.filter((m) => m.kind === 'button').length;
    // Buttons sit on one side only of the pair that closes.
    if (buttons > 0) out.push({ what: 'buttons', count: buttons, say: sayButtons(piece, buttons) });
    for (const edge of piece.edges) {
      const length = pathLength(edge.path);
      if (edge.kind === 'opening' && buttons === 0) {
        out.push(closing(`the ${edge.name} of ${piece.name}`, length));
      }
      if (/^underlap$/i.test(edge.name))
        out.push({
          what: 'fastening',
          length,
          say: `Button, or hook and bar, for the ${edge.name} of ${piece.name}`,
        });
      if (edge.kind === 'free' && edge.allowance === 0) {
        out.push({
          what: 'binding',
          length: length * times,
          say: `Binding for the ${edge.name} of ${piece.name}: ${say(length * times)}`,
        });
      }
    }
  }
  for (const seam of garment.seams) out.push(...zipInSeam(garment, seam));
  for (const [name, girth] of Object.entries(elasticGirths)) {
    out.push({
      what: 'elastic',
      length: girth + 25,
      say: `Elastic for the ${name}: ${say(girth + 25)}, lapped ${say(25)}`,
    });
  }
  return out;
}

/** The overlap says how wide a button may be; without room for a small one it says so. */
function sayButtons(piece: DrawnPiece, count: number): string {
  const beyond = overlapBeyond(piece);
  const words = `${count} buttons on ${piece.name}`;
  if (beyond === undefined) return words;
  const widest = widestButton(beyond);
  return widest < SMALL_BUTTON_MM
    ? `${words}: the edge lies only ${say(beyond)} beyond them; a button of ${say(SMALL_BUTTON_MM)} wants ${say(buttonOverlap(SMALL_BUTTON_MM))}`
    : `${words}, at most ${say(widest)} across`;
}

function closing(where: string, length: number): Notion {
  if (length < ZIP_LEAST_MM)
    return {
      what: 'fastening',
      length,
      say: `Buttons, hooks or press studs for ${where}: ${say(length)}`,
    };
  const sold = (step: number): number => Math.ceil(length / step - 1e-9) * step;
  return {
    what: 'zip',
    length,
    say: `Zip for ${where}: ${say(length)}, buy ${sold(ZIP_STEP_MM) / 10} cm or ${Math.round(sold(ZIP_STEP_INCH_MM) / MM_PER.in)} in`,
  };
}

/** A seam that says it holds a zip: open from its upper end to the notch that is called the zip's or the opening's. */
function zipInSeam(garment: Garment, seam: Seam): Notion[] {
  for (const ref of seam.a) {
    const found = edgeAt(garment, ref);
    const notch = found?.edge.notches.find((n) => /zip|opening/i.test(n.id));
    if (!found || !notch || found.piece.cloth !== 'shell') continue;
    const { edge } = found;
    const rises = pathEnd(edge.path).y > pathStart(edge.path).y;
    return [
      closing(`the ${seam.name.toLowerCase()}`, (rises ? 1 - notch.at : notch.at) * pathLength(edge.path)),
    ];
  }
  if (!/\bzip\b/i.test(seam.name)) return [];
  return [
    {
      what: 'zip',
      say: `Zip for the ${seam.name.toLowerCase()}: measure its opening, no notch tells where it ends`,
    },
  ];
}
