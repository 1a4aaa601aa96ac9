import { markingWords } from '../fit/index.ts';
import {
  called,
  countOf,
  len,
  levelWord,
  renderPhrase,
  t,
  cautionsFor,
  type Finding,
  type Fitting,
  type Phrase,
  type Tell,
} from '../garment/index.ts';
import type { Made } from '../pipeline/index.ts';
import type { Answer } from './verb.ts';
import { difference, wroteWords } from './step-words.ts';
import { cautionLines, table } from './words.ts';

const HEAD = [t`level`, t`size`, t`pieces measure`, t`target`];
const BY_HAND = t`A size table without pieces, to be marked by hand:`;

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
  const dash = t`-`;
  const rows = girths.map((g) => [
    t`${levelWord(g.level)}`,
    g.size === null ? dash : t`${called(g.size)}`,
    g.girth === null ? dash : t`${len(g.girth)}`,
    g.target === null ? dash : t`${len(g.target)}`,
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
  const { base } = made.plan;
  const text = (tell: Tell): string => {
    const say = (phrase: Phrase): string => renderPhrase(phrase, tell);
    const drawn =
      pieces.length === 0
        ? [say(BY_HAND), ...marking.map((line) => `  ${say(line)}`)]
        : [
            table(
              HEAD.map(say),
              rows.map((row) => row.map(say)),
            ),
            '',
            say(
              t`${countOf(made.garment.pieces.length, t`piece`, t`pieces`)}, ${countOf(seams.length, t`seam`, t`seams`)}; the largest seam difference is ${difference(worst)}.`,
            ),
            ...steps.map((s) => say(t`step ${called(s.id)}: ${s.sentence}`)),
          ];
    return [
      say(t`${called(fitting.title)}: base size ${called(base.size)}. ${base.why.sentence}`),
      '',
      ...drawn,
      ...cautionLines(fitting, tell),
      ...(wrote === undefined ? [] : [say(wroteWords(wrote))]),
    ].join('\n');
  };
  return {
    json: {
      id: fitting.id,
      title: fitting.title,
      base: made.plan.base,
      girths,
      steps,
      seams,
      ...(pieces.length === 0 ? { levels: made.plan.levels, marking } : {}),
      cautions: cautionsFor(fitting).map((c) => c.code),
      findings,
      ...(wrote === undefined ? {} : { wrote }),
    },
    text,
    show: fitting.body.show,
    wearer: fitting.body.wearer,
    findings,
  };
}
