import {
  called,
  t,
  renderPhrase,
  writeFitting,
  type Body,
  type Fitting,
  type Step,
} from '../garment/index.ts';
import { stepsAdded, type StepResult } from '../pipeline/index.ts';
import { notDone, TRUED } from './step-words.ts';
import { tellStep } from './tell-step.ts';
import type { Answer, Call } from './verb.ts';

type Session = Pick<Call, 'io' | 'pipeline'>;

/** An id no step of the fitting has yet: `alter-3`, `true-2`. */
export function freshId(fitting: Fitting, kind: Step['kind']): string {
  let n = fitting.steps.filter((s) => s.kind === kind).length + 1;
  while (fitting.steps.some((s) => s.id === `${kind}-${n}`)) n++;
  return `${kind}-${n}`;
}

/** A step that can't be done: its findings say why. */
function tellRefused({ step, sentence, findings }: StepResult, { show }: Body): Answer {
  return {
    json: { step, sentence, refused: true, touched: [], changes: [], findings },
    text: (tell) =>
      notDone(sentence)
        .map((words) => renderPhrase(words, tell))
        .join('\n'),
    show,
    findings,
  };
}

/**
 * Adds a step to a fitting, before the truing at its end, and tells what it does. Written to `out` when given, unless the step can't be done at all:
 * then its findings say why and nothing is written. What a truing step leaves unmended is told as an error and written all the same.
 */
export async function addStep(
  fitting: Fitting,
  step: Step,
  out: string | undefined,
  { io, pipeline }: Session,
): Promise<Answer> {
  const longer: Fitting = { ...stepsAdded(fitting, [step]), on: io.today() };
  const before = pipeline.make(fitting);
  const after = pipeline.make(longer);
  const result = after.steps.find((s) => s.step.id === step.id);
  // A truing of everything, at the end of which everything is trued already.
  if (!result)
    return tellStep({ fitting, before, after, sentence: TRUED, touched: [], changes: [], wrote: undefined });
  if (result.touched.length === 0 && result.findings.some((f) => f.severity === 'error'))
    return tellRefused(result, fitting.body);
  if (out !== undefined) await io.writeFile(out, writeFitting(longer));
  const { touched, changes } = result;
  const sentence = result.sentence;
  return tellStep({ fitting: longer, before, after, sentence, touched, changes, step, wrote: out });
}

/** Takes a step out again, wherever it stands, and tells what that does; what came after it is made anew. */
export async function dropStep(
  fitting: Fitting,
  id: string,
  out: string | undefined,
  { io, pipeline }: Session,
): Promise<Answer> {
  const shorter: Fitting = { ...fitting, on: io.today(), steps: fitting.steps.filter((s) => s.id !== id) };
  const before = pipeline.make(fitting);
  const after = pipeline.make(shorter);
  const gone = before.steps.find((s) => s.step.id === id);
  if (out !== undefined) await io.writeFile(out, writeFitting(shorter));
  const old = new Map(before.garment.pieces.map((p) => [p.id, p]));
  const touched = after.garment.pieces.filter((p) => old.get(p.id) !== p).map((p) => p.id);
  const sentence = t`Taken back: ${gone ? gone.sentence : called(id)}`;
  return tellStep({ fitting: shorter, before, after, sentence, touched, changes: [], wrote: out });
}
