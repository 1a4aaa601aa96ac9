import { markingWords } from '../fit/index.ts';
import {
  tellLength,
  renderPhrase,
  levelName,
  cautionsFor,
  type Finding,
  type Fitting,
  type Tell,
} from '../garment/index.ts';
import type { Made } from '../pipeline/index.ts';
import type { Answer } from './verb.ts';
import { hundredths, table } from './words.ts';

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
  // Without pieces there are no girths to read off: what is to be done is drawn by hand.
  const { chart, pieces } = fitting.pattern;
  const marking =
    pieces.length > 0
      ? []
      : markingWords(
          made.plan,
          chart.sizes.map((s) => s.id),
        );
  const drawn = (tell: Tell): string[] =>
    pieces.length === 0
      ? [
          'A size table without pieces, to be marked by hand:',
          ...marking.map((line) => `  ${renderPhrase(line, tell)}`),
        ]
      : [
          table(['level', 'size', 'pieces measure', 'target'], rows(tell)),
          '',
          `${made.garment.pieces.length} pieces, ${made.seams.length} seams; the largest seam difference is ${hundredths(worst)}.`,
          ...steps.map((s) => `step ${s.id}: ${renderPhrase(s.sentence, tell)}`),
        ];
  const text = (tell: Tell): string =>
    [
      `${fitting.title}: base size ${made.plan.base.size}. ${renderPhrase(made.plan.base.why.sentence, tell)}`,
      '',
      ...drawn(tell),
      ...cautionsFor(fitting.pattern.cautions).map((c) => `Caution: ${renderPhrase(c.words, tell)}`),
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
      ...(pieces.length === 0 ? { levels: made.plan.levels, marking } : {}),
      findings,
      ...(wrote === undefined ? {} : { wrote }),
    },
    text,
    show: fitting.body.show,
    findings,
  };
}
