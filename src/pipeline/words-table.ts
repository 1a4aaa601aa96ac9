import { capital, findingMaker, len, measureWord, t, type MeasureId, type Phrase } from '../garment/index.ts';

/** Measured across the body: these are too narrow or wide, not too short or long. */
export const ACROSS: ReadonlySet<MeasureId> = new Set(['across-back', 'across-front', 'bust-spread']);

const lackWord = (measure: MeasureId, mm: number): Phrase =>
  ACROSS.has(measure) ? (mm > 0 ? t`narrow` : t`wide`) : mm > 0 ? t`short` : t`long`;

/** The sentences of this room. */
export const PIPELINE_WORDS = {
  /** `others`: what alterations give of it, made or offered. */
  'length-differs': (of: { measure: MeasureId; amount: number; why: Phrase; others: number | null }) =>
    t`${capital(t`${measureWord(of.measure)}`)}: the garment is ${len(Math.abs(of.amount))} too ${lackWord(of.measure, of.amount)} for this body. ${of.why}${of.others === null ? null : t` Alterations made or offered make it ${len(Math.abs(of.others))} ${of.others > 0 ? t`longer` : t`shorter`}.`}`,
};

export const pipelineFinding = findingMaker(PIPELINE_WORDS);
