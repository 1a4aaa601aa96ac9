import { distance, pathBox } from '../../geometry/index.ts';
import type { Finding } from '../../garment/index.ts';
import { ReadError } from '../budget.ts';
import type { Path } from '../../geometry/index.ts';
import type { Drawing, Stroke } from '../drawing.ts';
import { isUprightBox, styleKey } from '../tiles/window.ts';
import { chainPaths } from './chain.ts';
import type { ScaleFound } from './proposal.ts';

const UNIT: Readonly<Record<string, number>> = {
  mm: 1,
  cm: 10,
  in: 25.4,
  inch: 25.4,
  inches: 25.4,
  '"': 25.4,
  '″': 25.4,
};

/** A length with its unit somewhere in words: `100 mm`, `4 in`, `10 x 10 cm`. mm, or null. */
function lengthIn(text: string): number | null {
  const m = /(\d+(?:[.,]\d+)?)\s*(?:[x×]\s*\d+(?:[.,]\d+)?\s*)?(mm|cm|inches|inch|in|"|″)(?![a-z])/i.exec(
    text,
  );
  return m ? Number(m[1]!.replace(',', '.')) * UNIT[m[2]!.toLowerCase()]! : null;
}

interface Square {
  readonly wide: number;
  readonly high: number;
  /** What it is said to be; null without words. */
  readonly said: number | null;
}

/** A straight line with its length written beside it. */
interface Bar {
  readonly long: number;
  readonly said: number;
}

/** The words of a line stand this near to its middle, mm. */
const BESIDE_MM = 12;

/** Lines of a ruler or a known length: words that are a length and nothing more, and a level or upright line by them. */
function barsOf(sheet: Drawing): Bar[] {
  const words = sheet.texts.flatMap((text) => {
    const said = /^\D{0,12}[\d.,]+\s*(?:mm|cm|in|inch|inches|"|″)\.?$/i.test(text.text.trim())
      ? lengthIn(text.text)
      : null;
    const [c, s] = [Math.cos(text.angle), Math.sin(text.angle)];
    const middle = { x: text.at.x + (c * text.width) / 2, y: text.at.y + (s * text.width) / 2 };
    return said === null || said < 20 ? [] : [{ said, middle }];
  });
  return sheet.strokes.flatMap((stroke) => {
    const box = pathBox(stroke.path);
    const [wide, high] = [box.maxX - box.minX, box.maxY - box.minY];
    if (stroke.closed || Math.min(wide, high) > 0.05 || Math.max(wide, high) < 15) return [];
    const centre = { x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2 };
    const own = words.find(({ middle }) => distance(middle, centre) < BESIDE_MM);
    return own ? [{ long: Math.max(wide, high), said: own.said }] : [];
  });
}

/** Throws ReadError `wrong-correction` where no line has that length written beside it. */
function scaleByBar(sheet: Drawing, scaleBy: string): ScaleFound {
  const length = lengthIn(scaleBy);
  const bar = barsOf(sheet).find((one) => one.said === length);
  if (length === null || !bar)
    throw new ReadError(
      'wrong-correction',
      sheet.name,
      `No line with its length of “${scaleBy}” written beside it was found in ${sheet.name}.`,
    );
  const factor = length / bar.long;
  return {
    factor,
    proven: true,
    evidence: `Scaled by ${factor.toFixed(5)}: the line of ${round(bar.long)} mm is ${round(length)} mm as you said.`,
  };
}

/** Beyond this share a printed square and its words disagree. */
const AGREES = 0.002;

/** Longest side of a test square, mm. */
const LARGEST = 320;

/** Closed boxes, and those that a page border has cut or that are drawn side by side as four lines. */
function boxesOf({ strokes }: Drawing): Path[] {
  const byStyle = new Map<string, Stroke[]>();
  for (const stroke of strokes) {
    const box = pathBox(stroke.path);
    const [wide, high] = [box.maxX - box.minX, box.maxY - box.minY];
    const sides = stroke.path.every(
      (p) => nearly(p.x, box.minX, box.maxX) || nearly(p.y, box.minY, box.maxY),
    );
    if (stroke.closed || !sides || wide > LARGEST || high > LARGEST) continue;
    const key = styleKey(stroke);
    byStyle.set(key, [...(byStyle.get(key) ?? []), stroke]);
  }
  const joined = [...byStyle.values()].flatMap((list) => chainPaths(list).filter((chain) => chain.closed));
  return [...strokes.filter((stroke) => stroke.closed), ...joined]
    .filter(isUprightBox)
    .map(({ path }) => path);
}

const nearly = (a: number, ...to: readonly number[]): boolean => to.some((b) => Math.abs(a - b) < 0.05);

function squaresOf(sheet: Drawing): Square[] {
  const squares: Square[] = [];
  for (const path of boxesOf(sheet)) {
    const box = pathBox(path);
    const wide = box.maxX - box.minX;
    const high = box.maxY - box.minY;
    if (wide < 15 || wide > LARGEST || Math.abs(wide - high) > 0.03 * wide) continue;
    const said = sheet.texts
      .filter(
        ({ at }) =>
          at.x > box.minX - 15 && at.x < box.maxX + 15 && at.y > box.minY - 15 && at.y < box.maxY + 15,
      )
      .map((text) => lengthIn(text.text))
      .filter((length): length is number => length !== null)
      // Of several lengths around a square the one nearest to it is meant.
      .toSorted((a, b) => Math.abs(Math.log(a / wide)) - Math.abs(Math.log(b / wide)))[0];
    squares.push({
      wide,
      high,
      said: said !== undefined && Math.abs(Math.log(said / wide)) < 0.7 ? said : null,
    });
  }
  return squares;
}

/**
 * Finds the scale: as the person says (`scaleBy`: “100 mm square”, “4 in square”, “10 cm line”, or a bare factor), else as the file has it,
 * checked against the printed test square or a line with its length beside it. A square that disagrees is a finding; nothing is rescaled unasked.
 * Throws ReadError `wrong-correction` when what is said cannot be found.
 */
export function findScale(sheet: Drawing, scaleBy?: string): { scale: ScaleFound; findings: Finding[] } {
  const squares = squaresOf(sheet);
  if (scaleBy !== undefined)
    return {
      scale: /\b(?:line|bar|ruler)\b/i.test(scaleBy)
        ? scaleByBar(sheet, scaleBy)
        : askedScale(squares, scaleBy, sheet.name),
      findings: [],
    };
  const said = squares.filter((square) => square.said !== null);
  const agree = said.find(
    (square) =>
      Math.abs(square.wide / square.said! - 1) < AGREES && Math.abs(square.high / square.said! - 1) < AGREES,
  );
  if (agree) {
    return {
      scale: {
        factor: 1,
        proven: true,
        evidence: `The printed square of ${round(agree.said!)} mm measures ${round(agree.wide)} × ${round(agree.high)} mm.`,
      },
      findings: [],
    };
  }
  const bar = barsOf(sheet).find((one) => Math.abs(one.long / one.said - 1) < AGREES);
  if (bar) {
    return {
      scale: {
        factor: 1,
        proven: true,
        evidence: `The printed line of ${round(bar.said)} mm measures ${round(bar.long)} mm.`,
      },
      findings: [],
    };
  }
  const off = said[0];
  if (off) {
    const message = `The printed square says ${round(off.said!)} mm but measures ${round(off.wide)} × ${round(off.high)} mm in the file. Bring it in again and say that the square is ${round(off.said!)} mm if the words are right.`;
    return {
      scale: { factor: 1, proven: false, evidence: message },
      findings: [
        { code: 'scale-off', severity: 'warning', where: {}, amount: off.wide / off.said!, message },
      ],
    };
  }
  const message =
    'No printed test square was found. Check one length that you know before trusting the measures.';
  return {
    scale: { factor: 1, proven: false, evidence: `Lengths are as ${sheet.unitsFrom} has them.` },
    findings: [{ code: 'scale-unproven', severity: 'note', where: {}, message }],
  };
}

function askedScale(squares: readonly Square[], scaleBy: string, name: string): ScaleFound {
  const bare = Number(scaleBy);
  if (Number.isFinite(bare) && bare > 0.001 && bare < 1000)
    return { factor: bare, proven: false, evidence: `Scaled by ${bare} as you said.` };
  const length = lengthIn(scaleBy);
  if (length === null || !(length > 0)) {
    throw new ReadError(
      'wrong-correction',
      name,
      `“${scaleBy}” is no known length. Say for instance “100 mm square”, “4 in square” or “10 cm line”.`,
    );
  }
  const nearest = squares.toSorted(
    (a, b) =>
      (a.said === length ? 0 : 1) - (b.said === length ? 0 : 1) ||
      Math.abs(Math.log(a.wide / length)) - Math.abs(Math.log(b.wide / length)),
  )[0];
  if (!nearest) throw new ReadError('wrong-correction', name, `No square was found in ${name} to scale by.`);
  const factor = length / ((nearest.wide + nearest.high) / 2);
  return {
    factor,
    proven: true,
    evidence: `Scaled by ${factor.toFixed(5)}: the square of ${round(nearest.wide)} × ${round(nearest.high)} mm is ${round(length)} mm as you said.`,
  };
}

const round = (mm: number): string => String(Math.round(mm * 100) / 100);
