import { type Change, type Walk } from '../check/index.ts';
import {
  renderPhrase,
  tellLength,
  levelName,
  type Finding,
  type Fitting,
  type Phrase,
  type Tell,
} from '../garment/index.ts';
import type { Made, StepResult } from '../pipeline/index.ts';
import type { Answer } from './verb.ts';
import { hundredths, table } from './words.ts';

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

function sayChange(c: Change): string {
  const mm = (v: number): string => v.toFixed(1);
  if (c.kind === 'seam')
    return `seam ${c.seam}: ${mm(c.before.a)} and ${mm(c.before.b)} mm become ${mm(c.after.a)} and ${mm(c.after.b)} mm`;
  if (c.kind === 'band') return `band ${c.piece}: ${mm(c.before)} mm becomes ${mm(c.after)} mm`;
  if (c.kind === 'notch')
    return `notch ${c.notch} on ${c.piece}, ${c.edge}: from ${mm(c.before)} to ${mm(c.after)} mm`;
  if (c.kind === 'corner')
    return `${c.piece}, ${c.edge} at ${c.joint}: turns by ${mm(c.before)}°, now ${mm(c.after)}°`;
  return `dart ${c.dart} of ${c.piece}: legs differed by ${mm(c.before)} mm, now ${mm(c.after)} mm`;
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
  const l = (mm: number | null | undefined, tell: Tell): string =>
    mm === null || mm === undefined ? '-' : tellLength(mm, tell);
  const seams = seamsChanged(before, after);
  const girths = after.girths.map(({ level, girth, plan }) => ({
    level,
    before: before.girths.find((g) => g.level === level)?.girth ?? null,
    girth,
    target: plan?.target ?? null,
  }));
  const findings = newFindings(before, after);
  const stood = after.findings.length - findings.length;
  const text = (tell: Tell): string =>
    [
      renderPhrase(sentence, tell),
      ...(touched.length === 0 ? [] : [`Changed: ${touched.join(', ')}.`]),
      ...changes.map((c) => `  ${sayChange(c)}`),
      '',
      seams.length === 0
        ? 'No seam changed its length.'
        : table(
            ['seam', 'sides before', '', 'sides after', '', 'off by, before', 'after'],
            seams.map((s) => [
              s.name,
              l(s.before[0], tell),
              l(s.before[1], tell),
              l(s.after[0], tell),
              l(s.after[1], tell),
              hundredths(s.was),
              hundredths(s.difference),
            ]),
          ),
      '',
      table(
        ['level', 'girth before', 'after', 'target'],
        girths.map((g) => [levelName(g.level), l(g.before, tell), l(g.girth, tell), l(g.target, tell)]),
      ),
      ...(stood === 0
        ? []
        : [
            '',
            `${stood} older ${stood === 1 ? 'remark stands' : 'remarks stand'}; pintrue check tells all.`,
          ]),
      wrote === undefined ? 'Nothing was written.' : `Wrote ${wrote}.`,
    ].join('\n');
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
    findings,
  };
}
