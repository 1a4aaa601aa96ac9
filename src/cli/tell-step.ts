import type { Change, Walk } from '../check/index.ts';
import {
  renderPhrase,
  tellLength,
  levelWord,
  t,
  type Finding,
  type Fitting,
  type Phrase,
  type Tell,
} from '../garment/index.ts';
import type { Made, StepResult } from '../pipeline/index.ts';
import type { Answer } from './verb.ts';
import {
  changedWords,
  changeWords,
  difference,
  GIRTHS_HEAD,
  NO_SEAM_CHANGED,
  SEAMS_HEAD,
  stoodWords,
  wroteWords,
} from './step-words.ts';
import { table } from './words.ts';

/** A change of less than this is none, mm. */
const CHANGED_MM = 0.01;

interface SeamChange {
  readonly seam: string;
  readonly name: string;
  readonly before: readonly [number, number];
  readonly after: readonly [number, number];
  /** How far the two sides are from what is meant, before and after. */
  readonly was: number;
  readonly difference: number;
}

/** Seams of which a side changed, both lengths before and after. */
function seamsChanged(before: Made, after: Made): readonly SeamChange[] {
  const old = new Map(before.seams.map((w) => [w.seam.id, w]));
  return after.seams.flatMap((w: Walk): SeamChange[] => {
    const was = old.get(w.seam.id);
    if (was && Math.abs(was.a - w.a) < CHANGED_MM && Math.abs(was.b - w.b) < CHANGED_MM) return [];
    return [
      {
        seam: w.seam.id,
        name: w.seam.name,
        before: [was?.a ?? 0, was?.b ?? 0],
        after: [w.a, w.b],
        was: was?.difference ?? 0,
        difference: w.difference,
      },
    ];
  });
}

/** Those that were not there before, and every error. */
function newFindings(before: Made, after: Made): readonly Finding[] {
  const key = (f: Finding): string => JSON.stringify([f.code, f.where, f.values]);
  const old = new Set(before.findings.map(key));
  return after.findings.filter((f) => f.severity === 'error' || !old.has(key(f)));
}

/** What is told of one step done or taken back: the garment without it and with it, and the step's own words. */
export interface StepTale {
  readonly fitting: Fitting;
  readonly before: Made;
  readonly after: Made;
  readonly sentence: Phrase;
  readonly touched: readonly string[];
  readonly changes: readonly Change[];
  readonly step?: StepResult['step'];
  readonly wrote: string | undefined;
}

/** Sentence, pieces, seam lengths and girths before and after, against the targets; the findings that are new. */
export function tellStep({
  fitting,
  before,
  after,
  sentence,
  touched,
  changes,
  step,
  wrote,
}: StepTale): Answer {
  const seams = seamsChanged(before, after);
  const girths = after.girths.map(({ level, girth, plan }) => ({
    level,
    before: before.girths.find((g) => g.level === level)?.girth ?? null,
    girth,
    target: plan?.target ?? null,
  }));
  const findings = newFindings(before, after);
  const stood = after.findings.length - findings.length;
  const text = (tell: Tell): string => {
    const say = (phrase: Phrase): string => renderPhrase(phrase, tell);
    const length = (mm: number | null | undefined): string =>
      mm === null || mm === undefined ? '-' : tellLength(mm, tell);
    return [
      say(sentence),
      ...(touched.length === 0 ? [] : [say(changedWords(touched))]),
      ...changes.map((c) => `  ${say(changeWords(c))}`),
      '',
      seams.length === 0
        ? say(NO_SEAM_CHANGED)
        : table(
            SEAMS_HEAD.map(say),
            seams.map((s) => [
              s.name,
              ...[...s.before, ...s.after].map(length),
              ...[s.was, s.difference].map((mm) => say(t`${difference(mm)}`)),
            ]),
          ),
      '',
      table(
        GIRTHS_HEAD.map(say),
        girths.map((g) => [
          say(t`${levelWord(g.level)}`),
          length(g.before),
          length(g.girth),
          length(g.target),
        ]),
      ),
      ...(stood === 0 ? [] : ['', say(stoodWords(stood))]),
      say(wroteWords(wrote)),
    ].join('\n');
  };
  return {
    json: {
      ...(step === undefined ? {} : { step }),
      sentence,
      touched,
      changes,
      seams,
      girths,
      findings: after.findings,
      ...(wrote === undefined ? {} : { wrote }),
    },
    text,
    show: fitting.body.show,
    wearer: fitting.body.wearer,
    findings,
  };
}
