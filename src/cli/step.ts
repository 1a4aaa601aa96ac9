import { walkAll, type Change, type Walk } from '../check/index.ts';
import {
  LEVELS,
  writeFitting,
  writeLength,
  type Finding,
  type Fitting,
  type Garment,
  type Step,
} from '../garment/index.ts';
import { make, type Made, type StepResult } from '../pipeline/index.ts';
import type { Io } from './io.ts';
import type { Answer } from './verb.ts';
import { hundredths, table } from './words.ts';

/** An id no step of the fitting has yet: `alter-3`, `true-2`. */
export function freshId(fitting: Fitting, kind: Step['kind']): string {
  let n = fitting.steps.filter((s) => s.kind === kind).length + 1;
  while (fitting.steps.some((s) => s.id === `${kind}-${n}`)) n++;
  return `${kind}-${n}`;
}

/** Seam lengths that a step changed by a hundredth of a millimetre or more. */
function seamsChanged(
  before: Garment,
  after: Garment,
): { seam: string; name: string; before: [number, number]; after: [number, number]; difference: number }[] {
  const old = new Map(walkAll(before).map((w) => [w.seam.id, w]));
  return walkAll(after).flatMap((w: Walk) => {
    const was = old.get(w.seam.id);
    const moved = was === undefined || Math.abs(was.a - w.a) >= 0.01 || Math.abs(was.b - w.b) >= 0.01;
    return moved
      ? [
          {
            seam: w.seam.id,
            name: w.seam.name,
            before: [was?.a ?? 0, was?.b ?? 0],
            after: [w.a, w.b],
            difference: w.difference,
          },
        ]
      : [];
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

function tellStep(fitting: Fitting, made: Made, result: StepResult, wrote: string | undefined): Answer {
  const l = (mm: number): string => writeLength(mm, fitting.body.show === 'in' ? { in: 16 } : 'cm');
  const seams = seamsChanged(result.before, result.after);
  const girths = made.girths.map(({ level, girth, plan }) => ({
    level,
    girth,
    target: plan?.target ?? null,
  }));
  const findings =
    wrote === undefined && result.findings.some((f) => f.severity === 'error')
      ? result.findings
      : made.findings;
  const text = [
    result.sentence,
    ...(result.touched.length === 0 ? [] : [`Changed: ${result.touched.join(', ')}.`]),
    ...result.changes.map((c) => `  ${sayChange(c)}`),
    ...(seams.length === 0
      ? []
      : [
          '',
          table(
            ['seam', 'before', '', 'after', '', 'differs by'],
            seams.map((s) => [
              s.name,
              l(s.before[0]),
              l(s.before[1]),
              l(s.after[0]),
              l(s.after[1]),
              hundredths(s.difference),
            ]),
          ),
        ]),
    '',
    table(
      ['level', 'pieces measure', 'target'],
      girths.map((g) => [
        LEVELS.find((x) => x.level === g.level)?.name ?? g.level,
        g.girth === null ? '-' : l(g.girth),
        g.target === null ? '-' : l(g.target),
      ]),
    ),
    ...(wrote === undefined ? ['Nothing was written.'] : [`Wrote ${wrote}.`]),
  ].join('\n');
  return {
    json: {
      step: result.step,
      sentence: result.sentence,
      touched: result.touched,
      changes: result.changes,
      seams,
      girths,
      findings,
      ...(wrote === undefined ? {} : { wrote }),
    },
    text,
    findings,
  };
}

/**
 * Adds a step at the end of a fitting and tells what it does. Written to `out` when given, unless the step itself can't be done:
 * then its findings say why and nothing is written.
 */
export async function addStep(
  fitting: Fitting,
  step: Step,
  out: string | undefined,
  io: Io,
): Promise<Answer> {
  const longer: Fitting = { ...fitting, on: io.today(), steps: [...fitting.steps, step] };
  const made = make(longer);
  const result = made.steps.at(-1)!;
  const refused = result.findings.some((f: Finding) => f.severity === 'error');
  const wrote = refused ? undefined : out;
  if (wrote !== undefined) await io.writeFile(wrote, writeFitting(longer));
  return tellStep(longer, made, result, wrote);
}
