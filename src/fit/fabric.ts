import { bodyValue, MM_PER, MEASURES, say, type Finding } from '../garment/index.ts';
import { HEAD_GIRTH } from './ease-table.ts';
import type { Opening, PlanInput } from './input.ts';
import { passes } from './stretch.ts';

const percent = (share: number): string => `${Math.round(share * 100)} %`;

/** Whether the fabric suits what the pattern is drafted for. */
function suits(input: PlanInput): readonly Finding[] {
  const { cloth, fabric } = input;
  if (cloth.kind === 'knit' && fabric.kind === 'woven') {
    return [
      {
        code: 'woven-for-knit',
        severity: 'error',
        where: {},
        message: `This pattern needs a knit that stretches ${percent(cloth.stretch)}. A woven can't take its place: choose a knit, or a pattern for wovens.`,
      },
    ];
  }
  if (cloth.kind === 'knit' && fabric.stretch === undefined) {
    return [
      {
        code: 'stretch-unknown',
        severity: 'note',
        where: {},
        message: `The fabric's stretch is not known; the pattern's ${percent(cloth.stretch)} is taken. Test it: fold, hold 4 in crosswise, stretch it as far as it goes without distortion; to 5 in is 25 %.`,
      },
    ];
  }
  if (cloth.kind === 'knit' && fabric.stretch! < cloth.stretch - 1e-9) {
    return [
      {
        code: 'stretch-short',
        severity: 'warning',
        where: {},
        amount: (cloth.stretch - fabric.stretch!) * 100,
        message: `The fabric stretches ${percent(fabric.stretch!)}; the pattern asks for ${percent(cloth.stretch)}. Where it is smaller than the body it is made less small, in proportion.`,
      },
    ];
  }
  if (cloth.kind === 'woven' && fabric.kind === 'knit') {
    return [
      {
        code: 'knit-for-woven',
        severity: 'note',
        where: {},
        message: 'The pattern is drafted for wovens; in a knit it will be roomier than it needs to be.',
      },
    ];
  }
  return [];
}

/** Whether the body passes an opening: F (1 + s) must reach the girth that goes through. */
function passesOpening(input: PlanInput, opening: Opening): Finding | null {
  const measured = bodyValue(input.body, opening.passes);
  const assumed = opening.passes === 'head-girth' ? HEAD_GIRTH * MM_PER.in : undefined;
  const girth = measured ?? assumed;
  const name = MEASURES[opening.passes].name;
  const where = { level: opening.level, measure: opening.passes };
  if (girth === undefined)
    return {
      code: 'measure-missing',
      severity: 'note',
      where,
      message: `The ${opening.name} must pass the ${name}, which was not measured.`,
    };
  const stretch =
    input.fabric.kind === 'knit'
      ? (input.fabric.stretch ?? (input.cloth.kind === 'knit' ? input.cloth.stretch : 0))
      : 0;
  const short = girth - passes(opening.finished, stretch);
  if (short <= 0) return null;
  const from = measured === undefined ? ' (not measured; a usual one is taken)' : '';
  return {
    code: 'opening-too-small',
    severity: 'error',
    where,
    amount: short,
    message: `The ${opening.name} is ${say(opening.finished)} and stretches to ${say(passes(opening.finished, stretch))}: it does not pass the ${name} of ${say(girth)}${from}. Widen it, or give it a fastening.`,
  };
}

/** What there is to say about the fabric and the openings that must pass the body. */
export function fabricFindings(input: PlanInput): readonly Finding[] {
  const openings = (input.openings ?? []).map((o) => passesOpening(input, o)).filter((f) => f !== null);
  return [...suits(input), ...openings];
}
