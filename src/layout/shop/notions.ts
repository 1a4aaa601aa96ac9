import {
  hasRole,
  edgeAt,
  MM_PER,
  type DrawnPiece,
  type Garment,
  type Seam,
  timesCut,
  type Phrase,
  t,
  called,
  len,
  countOf,
  eachIn,
  lenAs,
} from '../../garment/index.ts';
import { pathEnd, pathLength, pathStart } from '../../geometry/index.ts';
import { buttonOverlap, overlapBeyond, widestButton } from './button.ts';

/** What the garment needs besides cloth, from its own edges and marks. */
export interface Notion {
  readonly what: 'zip' | 'fastening' | 'buttons' | 'elastic' | 'binding';
  /** mm, for all but buttons: of the opening, the elastic, the edge. */
  readonly length?: number;
  readonly count?: number;
  readonly say: Phrase;
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
 * @param elasticGirths round the body (mm) where each elastic will sit, by its name
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
        out.push(closing(t`the ${called(edge.name)} of ${called(piece.name)}`, length));
      }
      if (edge.kind === 'free' && hasRole(edge, 'opening'))
        out.push({
          what: 'fastening',
          length,
          say: t`Button, or hook and bar, for the ${called(edge.name)} of ${called(piece.name)}`,
        });
      if (edge.kind === 'free' && edge.allowance === 0) {
        out.push({
          what: 'binding',
          length: length * times,
          say: t`Binding for the ${called(edge.name)} of ${called(piece.name)}: ${len(length * times)}`,
        });
      }
    }
  }
  for (const seam of garment.seams) out.push(...zipInSeam(garment, seam));
  for (const [name, girth] of Object.entries(elasticGirths)) {
    out.push(elastic(name, girth));
  }
  return out;
}

/** By how much elastic is shorter than the body where it sits, joined: by 1 to 3 in at the waist or hips, less round an arm or leg (common practice). mm */
const ELASTIC_LESS = { trunk: [25, 75], limb: [10, 25] } as const;
/** Nothing round a trunk is smaller, hardly a limb larger. mm */
const TRUNK_LEAST_MM = 450;
const ELASTIC_LAP_MM = 25;

/** Elastic as long as its casing gathers nothing: it is measured on the body. */
function elastic(name: string, round: number): Notion {
  const [least, most] = ELASTIC_LESS[round < TRUNK_LEAST_MM ? 'limb' : 'trunk'];
  const cut = (less: number): number => round - less + ELASTIC_LAP_MM;
  return {
    what: 'elastic',
    length: cut(least),
    say: t`Elastic for the ${called(name)}: cut it ${len(cut(most))} to ${len(cut(least))} long and lap the ends ${len(ELASTIC_LAP_MM)}; joined it is then ${len(least)} to ${len(most)} less than the ${len(round)} round the body. Try it on before it is joined: how it grips depends on the elastic.`,
  };
}

/** The overlap says how wide a button may be; without room for a small one it says so. */
function sayButtons(piece: DrawnPiece, buttons: number): Phrase {
  const beyond = overlapBeyond(piece);
  const words = t`${countOf(buttons, t`button`, t`buttons`)} on ${called(piece.name)}`;
  if (beyond === undefined) return words;
  const widest = widestButton(beyond);
  return widest < SMALL_BUTTON_MM
    ? t`${words}: the edge lies only ${len(beyond)} beyond them; a button of ${len(SMALL_BUTTON_MM)} wants ${len(buttonOverlap(SMALL_BUTTON_MM))}`
    : t`${words}, at most ${len(widest)} across`;
}

function closing(where: Phrase, length: number): Notion {
  if (length < ZIP_LEAST_MM)
    return {
      what: 'fastening',
      length,
      say: t`Buttons, hooks or press studs for ${where}: ${len(length)}`,
    };
  const sold = (step: number): number => Math.ceil(length / step - 1e-9) * step;
  return {
    what: 'zip',
    length,
    say: t`Zip for ${where}: ${len(length)}, buy ${eachIn(lenAs(sold(ZIP_STEP_INCH_MM), 'in'), lenAs(sold(ZIP_STEP_MM), 'cm'))}`,
  };
}

/** A seam that holds a zip: open from its upper end to the notch where the zip ends. */
function zipInSeam(garment: Garment, seam: Seam): Notion[] {
  for (const ref of seam.a) {
    const found = edgeAt(garment, ref);
    const notch = found?.edge.notches.find((n) => n.role === 'zip-end');
    if (!found || !notch || found.piece.cloth !== 'shell') continue;
    const { edge } = found;
    const rises = pathEnd(edge.path).y > pathStart(edge.path).y;
    return [
      closing(
        t`the ${called(seam.name.toLowerCase())}`,
        (rises ? 1 - notch.at : notch.at) * pathLength(edge.path),
      ),
    ];
  }
  return [];
}
