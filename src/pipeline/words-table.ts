import { capital, findingMaker, len, measureWord, t, type MeasureId, type Phrase } from '../garment/index.ts';

/** The sentences of this room. */
export const PIPELINE_WORDS = {
  'length-differs': ({ measure, amount, why }: { measure: MeasureId; amount: number; why: Phrase }) =>
    t`${capital(t`${measureWord(measure)}`)}: the garment is ${len(Math.abs(amount))} too ${amount > 0 ? t`short` : t`long`} for this body. ${why}`,
};

export const pipelineFinding = findingMaker(PIPELINE_WORDS);
