import { alterFinding } from '../words/words-table.ts';
import { InputError, t, called, pieceAt } from '../../garment/index.ts';
import type { Finding, Garment, Phrase, PieceId, Step } from '../../garment/index.ts';
import { bandsFollow } from '../follow/band-follows.ts';
import { capsFollow } from '../follow/cap-follows.ts';
import { CATALOGUE } from '../catalogue/index.ts';
import { newChange } from '../follow/change.ts';
import { foldFindings } from '../move/fold-check.ts';
import { meetingNotches } from '../follow/meeting-notch.ts';
import { Refusal } from '../words/refusal.ts';
import { outcomes, promiseFindings } from '../promise/keep.ts';
import { PROMISES, SAID_ALREADY } from '../promise/promise-table.ts';
import { limitFindings, readParams } from '../entry/values.ts';
import type { Alteration } from '../entry/alteration.ts';

export type AlterStep = Extract<Step, { kind: 'alter' }>;

export interface StepOutcome {
  readonly garment: Garment;
  readonly findings: readonly Finding[];
  /** Pieces that are no longer the same objects. */
  readonly touched: readonly PieceId[];
  /** What was done, as a sewist would say it. */
  readonly sentence: Phrase;
}

const byId = new Map(CATALOGUE.map((a) => [a.id, a]));

/** The catalogue entry of an id. */
export const alterationOf = (entry: string): Alteration | undefined => byId.get(entry);

const unknown = (entry: string): Finding => alterFinding('unknown-alteration', 'error', {}, { entry });

/** The step in one sentence, with its amounts. A step whose parameters are not valid says so. */
export function describeStep(step: AlterStep): Phrase {
  const alteration = byId.get(step.entry);
  if (!alteration) return t`Unknown alteration ${called(step.entry)}`;
  try {
    return alteration.sentence(readParams(alteration, step.params));
  } catch (error) {
    if (error instanceof InputError) return t`${alteration.name}: amounts missing`;
    throw error;
  }
}

function refused(garment: Garment, step: AlterStep, findings: readonly Finding[]): StepOutcome {
  const where = { step: step.id };
  return {
    garment,
    findings: findings.map((f) => ({ ...f, where: { ...f.where, ...where } })),
    touched: [],
    sentence: describeStep(step),
  };
}

/**
 * One alteration made on the whole garment: the pieces it names, what they join and what follows them. Pure: the garment that comes in is untouched, and a piece that
 * did not change is the same object. Findings: `beyond-limit`, `band-follows`, `cap-follows`, `fold-bent` and what the alteration itself has to say;
 * when it cannot be done (`no-shoulder`, `fold-swallows-corner`, `bad-parameter`, `unknown-alteration` …) one error, and the garment comes back as it was.
 */
export function applyStep(garment: Garment, step: AlterStep): StepOutcome {
  const alteration = byId.get(step.entry);
  if (!alteration) return refused(garment, step, [unknown(step.entry)]);
  const change = newChange(garment);
  try {
    const values = readParams(alteration, step.params);
    alteration.make(change, values);
    if (!change.capDone) capsFollow(change);
    bandsFollow(change);
    meetingNotches(change);
    const kept = outcomes(garment, change.garment, PROMISES[alteration.id]!(values, garment));
    const told = change.findings.flatMap((f) => SAID_ALREADY[f.code] ?? []);
    const findings = [
      ...limitFindings(alteration, values),
      ...change.findings,
      ...folds(garment, change.garment),
      ...promiseFindings(kept, told),
    ];
    return {
      garment: change.garment,
      findings: findings.map((f) => ({ ...f, where: { ...f.where, step: step.id } })),
      touched: [...change.touched].toSorted(),
      sentence: alteration.sentence(values, { before: garment, after: change.garment }),
    };
  } catch (error) {
    if (error instanceof Refusal) return refused(garment, step, [error.finding()]);
    if (error instanceof InputError) {
      return refused(
        garment,
        step,
        error.problems.map((p) => ({ code: p.code, severity: 'error', where: {}, values: p.values ?? {} })),
      );
    }
    throw error;
  }
}

function folds(before: Garment, after: Garment): Finding[] {
  return after.pieces.flatMap((piece) => {
    const old = pieceAt(before, piece.id);
    return old && old !== piece ? foldFindings(old, piece) : [];
  });
}
