import { REFUSAL_WORDS as NO } from '../words/refusal-table.ts';
import { EVIDENCE_WORDS as SAY } from '../words/evidence-table.ts';
import { exchangeFinding } from '../words/words-table.ts';
import type { Finding } from '../../garment/index.ts';
import { ReadError } from '../drawing/budget.ts';
import type { Drawing } from '../drawing/drawing.ts';
import { barsOf, lengthIn, marksInAnyUnits, squaresOf } from './known-length.ts';
import type { Square } from './known-length.ts';
import type { ScaleFound } from './proposal.ts';

/** Throws ReadError `wrong-correction` where no line has that length written beside it. */
function scaleByBar(sheet: Drawing, scaleBy: string): ScaleFound {
  const length = lengthIn(scaleBy);
  const bar = [...barsOf(sheet), ...marksInAnyUnits(sheet).bars].find((one) => one.said === length);
  if (length === null || !bar)
    throw new ReadError(
      'wrong-correction',
      sheet.name,
      NO['no-such-line']({ file: sheet.name, said: scaleBy }),
    );
  const factor = length / bar.long;
  return {
    factor,
    proven: true,
    evidence: SAY['scaled-line']({ factor, long: bar.long, said: length }),
  };
}

/** Beyond this share a printed square and its words disagree. */
const AGREES = 0.002;

const unitsUnknown = ({ findings }: Drawing): boolean =>
  findings.some(({ code }) => code === 'units-assumed' || code === 'units-doubtful');

/** A length of this and more is a square's; less stands on a square pocket as its allowance, mm. */
const SQUARE_MM = 25;
const saysMuch = ({ said }: Square): boolean => said !== null && said >= SQUARE_MM;

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
        : askedScale(sheet, squares, scaleBy),
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
        evidence: SAY['square-measures']({ said: agree.said!, wide: agree.wide, high: agree.high }),
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
        evidence: SAY['line-measures'](bar),
      },
      findings: [],
    };
  }
  const off = said[0] ?? (unitsUnknown(sheet) ? marksInAnyUnits(sheet).squares.find(saysMuch) : undefined);
  if (off) {
    const values = { said: off.said!, wide: off.wide, high: off.high };
    return {
      scale: {
        factor: 1,
        proven: false,
        evidence: SAY['square-measures'](values),
      },
      findings: [exchangeFinding('scale-off', 'warning', {}, values, { amount: off.wide / off.said! })],
    };
  }
  return {
    scale: {
      factor: 1,
      proven: false,
      evidence: unitsUnknown(sheet)
        ? SAY['lengths-unproven']()
        : SAY['lengths-as']({ from: sheet.unitsFrom }),
    },
    findings: [exchangeFinding('scale-unproven', 'note', {}, {})],
  };
}

/** The square with that length beside it, in whatever units; else the one most like it in size, or the only one there is. */
function squareMeant(sheet: Drawing, squares: readonly Square[], length: number): Square | undefined {
  const off = ({ wide }: Square) => Math.abs(Math.log(wide / length));
  const likest = squares.toSorted((a, b) => off(a) - off(b));
  const any = marksInAnyUnits(sheet).squares;
  const alone = any.every(({ wide }) => Math.abs(wide / any[0]!.wide - 1) < ALIKE) ? any[0] : undefined;
  return [...likest, ...any].find(({ said }) => said === length) ?? likest[0] ?? alone;
}

/** Squares that differ by less than this are one size drawn twice. */
const ALIKE = 0.01;

function askedScale(sheet: Drawing, squares: readonly Square[], scaleBy: string): ScaleFound {
  const { name } = sheet;
  const bare = Number(scaleBy);
  if (Number.isFinite(bare) && bare > 0.001 && bare < 1000)
    return { factor: bare, proven: false, evidence: SAY['scaled-bare']({ factor: bare }) };
  const length = lengthIn(scaleBy);
  if (length === null || !(length > 0)) {
    throw new ReadError('wrong-correction', name, NO['no-such-length']({ said: scaleBy }));
  }
  const nearest = squareMeant(sheet, squares, length);
  if (!nearest) throw new ReadError('wrong-correction', name, NO['no-square']({ file: name }));
  const factor = length / ((nearest.wide + nearest.high) / 2);
  return {
    factor,
    proven: true,
    evidence: SAY['scaled-square']({ factor, wide: nearest.wide, high: nearest.high, said: length }),
  };
}
