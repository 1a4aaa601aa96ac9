import { REFUSAL_WORDS as NO } from '../words/refusal-table.ts';
import { exchangeFinding } from '../words/words-table.ts';
import { MM_PER } from '../../garment/index.ts';
import type { Finding } from '../../garment/index.ts';
import { pathBox, pointsBox, ringContains } from '../../geometry/index.ts';
import { ReadError, openBudget } from '../drawing/budget.ts';
import type { ReadOptions } from '../drawing/budget.ts';
import { boxInside } from '../drawing/drawing.ts';
import type { Drawing, Stroke } from '../drawing/drawing.ts';
import { wholePattern } from '../write/structure.ts';
import type { Structure } from '../write/structure.ts';
import { findAssembly } from '../tiles/assembly.ts';
import type { Assembly, AssemblyCorrections } from '../tiles/assembly.ts';
import { assemble, assembledSize } from '../tiles/compose.ts';
import { isUprightBox } from '../tiles/window.ts';
import { withInside, withoutStitching } from './doubled.ts';
import { withoutFar } from './far.ts';
import { findAsks, wholeAsks } from './ask.ts';
import { findFollowers, withPocketMouths } from './follower.ts';
import { letterStrokes, sayWords } from './lettering.ts';
import { findNests } from './nest.ts';
import type { Nest } from './nest.ts';
import { findOutlines } from './outline.ts';
import { CLOSE_BY_HAND, openOutlines, sayOpen } from './open-lines.ts';
import type { Outline } from './outline.ts';
import { splitAtOpenings } from './opening.ts';
import { findPiece } from './piece.ts';
import type { Proposal, ProposedPiece } from './proposal.ts';
import { scaled } from './scaled.ts';
import { readShapes } from './glyph/read-shapes.ts';
import { findNamedSizes, sizeCounts } from './glyph/shape-sizes.ts';
import { spreadPieces } from './spread.ts';
import { findScale } from './square.ts';
import { findTogether } from './together.ts';
import { wholeProposal } from './whole.ts';

export interface RecogniseOptions extends ReadOptions {
  /** `100 mm square`, `4 in square`, or a bare factor. */
  readonly scaleBy?: string;
  readonly assembly?: AssemblyCorrections;
}

/**
 * Finds pieces, sizes, edges, marks and seams in a drawing. Everything found carries its evidence and waits for a person's yes.
 * Throws ReadError: `no-lines` when nothing closed is found, `cancelled`, `too-slow`, `wrong-correction`.
 */
export function recognise(read: Drawing, options: RecogniseOptions = {}): Proposal {
  const drawing = withoutFar(read);
  const budget = openBudget(1, { name: drawing.name, ...options });
  const assembly = findAssembly(drawing, options.assembly, options);
  const put = drawing.format === 'dxf' ? spreadPieces(drawing) : assemble(drawing, assembly);
  const { scale, findings: scaleFindings } = findScale(put, options.scaleBy);
  const sheet = scale.factor === 1 ? put : scaled(put, scale.factor);
  // With a known length said, where the file's own units come from no longer matters.
  const told = sheet.findings.filter(
    ({ code }) => options.scaleBy === undefined || !code.startsWith('units-'),
  );
  const findings: Finding[] = [...told, ...scaleFindings];
  const whole = scale.factor === 1 ? wholePattern(put) : { pattern: null, why: null };
  if (whole.pattern) {
    const { placement } = put.structure as Structure;
    return {
      name: drawing.name,
      unitsFrom: sheet.unitsFrom,
      scale,
      assembly,
      sheet,
      findings,
      asks: wholeAsks(whole.pattern),
      ...wholeProposal(whole.pattern, placement),
    };
  }
  if (whole.why) findings.push(exchangeFinding('structure-lost', 'warning', {}, { why: whole.why }));
  budget.report('outlines', 0, 3);
  const drawn = ofTheSheet(sheet, assembly, scale.factor, findings);
  const letters = letterStrokes(drawn);
  const found = findOutlines(
    drawn.filter((stroke) => !letters.has(stroke)),
    budget,
  );
  const all = findNests(found.outlines.filter((outline) => !isFurniture(outline, sheet)));
  const nests = all.filter((nest) => !all.some((other) => other !== nest && liesInside(nest, other)));
  if (nests.length === 0)
    throw new ReadError(
      'no-lines',
      drawing.name,
      NO['no-closed-outline']({
        file: drawing.name,
        closeByHand: openOutlines(found.loose, []).length > 0 ? CLOSE_BY_HAND : null,
      }),
    );
  const { nests: single, allowance, sewn } = withoutStitching(nests);
  if (allowance !== null) findings.push(sayDoubled(allowance));
  const ordered = single.toSorted(byPlace);
  const shapes = readShapes(
    drawn,
    ordered.map((nest) => nest.outlines.map(({ ring }) => ring)),
    sizeCounts(ordered),
  );
  const { found: sizes, fromShapes } = findNamedSizes(ordered, sheet.texts, shapes.sizes, sheet.strokes);
  const numbers = shapes.numbers.map(({ text }) => text);
  const outlined = [...letters].filter((stroke) => !shapes.strokes.has(stroke)).length;
  // Beside texts, single strokes in a row are as well hatches.
  const unread = outlined > 0 || sheet.texts.length > 0 ? outlined : shapes.unread;
  findings.push(...sayWords({ unread, texts: sheet.texts.length, sizes: fromShapes, numbers }));
  findings.push(...sizes.findings, ...sayOpen(found.loose, nests));
  const isLetter = ({ style }: { readonly style: Stroke }): boolean => shapes.strokes.has(style);
  const loose = found.loose.filter((run) => !isLetter(run));
  const small = found.small.filter((shape) => !isLetter(shape));
  const pieces: ProposedPiece[] = [];
  ordered.forEach((_, i) => {
    budget.look();
    budget.report('pieces', i, ordered.length);
    const made = findPiece(sizes.bySize[i]!, i + 1, {
      sizes: sizes.sizes,
      sizeOf: (run) => sizes.sizeOf(run.style),
      loose,
      small,
      texts: [...sheet.texts, ...shapes.numbers],
    });
    pieces.push({ ...made.piece, edges: withInside(made.piece.edges, sizes.bySize[i]!, sewn) });
    findings.push(...made.findings);
  });
  budget.look();
  const mouthed = withPocketMouths(pieces);
  const split = splitAtOpenings(mouthed, findFollowers(mouthed));
  const { pieces: joined, seams } = findTogether(split.pieces, split.followers);
  budget.report('seams', 1, 1);
  return {
    name: drawing.name,
    unitsFrom: sheet.unitsFrom,
    scale,
    assembly,
    sheet,
    sizes: sizes.sizes,
    pieces: joined,
    seams,
    followers: split.followers,
    begun: split.pieces,
    asks: findAsks(sheet, allowance),
    findings,
  };
}

/** Beside tiles that were put together, lone pages (a map, a cover) hold no pieces: their drawings are small pictures. */
function ofTheSheet(
  sheet: Drawing,
  assembly: Assembly,
  factor: number,
  findings: Finding[],
): readonly Stroke[] {
  if (assembly.cells.length < 2 || assembly.apart.length === 0) return sheet.strokes;
  const pages = assembly.apart.map((page) => page + 1);
  findings.push(exchangeFinding('pages-apart', 'note', {}, { pages }));
  const right = assembledSize(assembly).width * factor;
  return sheet.strokes.filter((stroke) => pointsBox(stroke.path).minX <= right);
}

/** Test squares and frames: upright boxes that are square with a side of whole centimetres or inches, or as large as the sheet. */
function isFurniture(outline: Outline, sheet: Drawing): boolean {
  if (!isUprightBox({ ...outline.style, path: outline.path, closed: true })) return false;
  const box = pathBox(outline.path);
  const wide = box.maxX - box.minX;
  const high = box.maxY - box.minY;
  const page = sheet.pages[0]!;
  if (wide > page.width * 0.9 && high > page.height * 0.9) return true;
  if (Math.abs(wide - high) > 0.03 * wide) return false;
  const whole = (mm: number, unit: number) =>
    Math.abs(mm / unit - Math.round(mm / unit)) < 0.01 && mm / unit < 12;
  const told = sheet.texts.some(
    (text) =>
      text.at.x > box.minX &&
      text.at.x < box.maxX &&
      text.at.y > box.minY &&
      text.at.y < box.maxY &&
      /\d\s*(mm|cm|in|")/i.test(text.text),
  );
  return told || whole(wide, 50) || whole(wide, MM_PER.in);
}

/** A nest wholly inside another's outline is something drawn on that piece: a pocket's place, a window. */
function liesInside(nest: Nest, other: Nest): boolean {
  const own = nest.outlines[0]!;
  if (own.style.belongs?.piece !== undefined) return false;
  return other.outlines.some(
    (around) =>
      around.area > own.area * 1.3 &&
      boxInside(own.box, around.box) &&
      own.ring.every((point) => ringContains(around.ring, point)),
  );
}

const sayDoubled = (allowance: number): Finding =>
  exchangeFinding('cut-and-stitching-lines', 'note', {}, { allowance }, { amount: allowance });

/** As one reads: from the top, left to right. */
function byPlace(a: Nest, b: Nest): number {
  const p = a.outlines[0]!.box;
  const q = b.outlines[0]!.box;
  const level =
    Math.min(p.maxY, q.maxY) - Math.max(p.minY, q.minY) > 0.5 * Math.min(p.maxY - p.minY, q.maxY - q.minY);
  return level ? p.minX - q.minX : q.maxY - p.maxY;
}
