import { tellLength, told, levelName, type Finding, type Fitting, type Tell } from '../garment/index.ts';
import type { Made } from '../pipeline/index.ts';
import type { Answer } from './verb.ts';
import { hundredths, table } from './words.ts';

const CAUTION: Readonly<Record<string, string>> = {
  'child-drawstring':
    'Caution: no cords at a child’s neck or hood; at waist or hem at most 75 mm outside the channel. Local rules come first.',
  'child-sleepwear':
    'Caution: children’s nightwear must meet flammability and fit rules; never add ease to tight-fitting nightwear. Local rules come first.',
  'small-parts': 'Caution: no buttons or beads that can come off for a child under three.',
  tight: 'Caution: leave room at waist, neck and wrist; if it marks or numbs, it is too tight.',
};

/** The cautions of a pattern, in words; a topic we have no words for is named. */
function cautionsOf(fitting: Fitting): readonly string[] {
  return fitting.pattern.cautions.map((c) => CAUTION[c] ?? `Caution: ${c.replaceAll('-', ' ')}.`);
}

/** What was made, for people and for programs: girths against their targets, steps, seams, findings. */
export function tellMade(fitting: Fitting, made: Made, asked: readonly Finding[], wrote?: string): Answer {
  const girths = made.girths.map(({ level, girth, plan }) => ({
    level,
    girth,
    target: plan?.target ?? null,
    size: plan?.size ?? null,
  }));
  const seams = made.seams.map((w) => ({ seam: w.seam.id, a: w.a, b: w.b, difference: w.difference }));
  const steps = made.steps.map((s) => ({ id: s.step.id, sentence: s.sentence, touched: s.touched }));
  const findings = [...made.findings, ...asked];
  const worst = Math.max(0, ...made.seams.map((w) => Math.abs(w.difference)));
  const rows = (tell: Tell): string[][] =>
    girths.map((g) => [
      levelName(g.level),
      g.size ?? '-',
      g.girth === null ? '-' : tellLength(g.girth, tell),
      g.target === null ? '-' : tellLength(g.target, tell),
    ]);
  const text = (tell: Tell): string =>
    [
      `${fitting.title}: base size ${made.plan.base.size}. ${told(made.plan.base.why.sentence, tell)}`,
      '',
      table(['level', 'size', 'pieces measure', 'target'], rows(tell)),
      '',
      `${made.garment.pieces.length} pieces, ${made.seams.length} seams; the largest seam difference is ${hundredths(worst)}.`,
      ...steps.map((s) => `step ${s.id}: ${told(s.sentence, tell)}`),
      ...cautionsOf(fitting),
      ...(wrote === undefined ? [] : [`Wrote ${wrote}.`]),
    ].join('\n');
  return {
    json: {
      id: fitting.id,
      title: fitting.title,
      base: made.plan.base,
      girths,
      steps,
      seams,
      findings,
      ...(wrote === undefined ? {} : { wrote }),
    },
    text,
    show: fitting.body.show,
    findings,
  };
}
