import { garmentKind, type ClothNeed, type GarmentKind } from '../../garment/index.ts';
import { REQUIRED_ASKS, type Asks, type Corrections } from '../../exchange/index.ts';

export type Wearer = 'woman' | 'man' | 'child';

/** What a person has answered of what no line shows; absent: not yet. */
export interface Answers {
  /** Width of the allowance inside the printed lines, mm; 0: they are stitching lines. */
  readonly included?: number;
  readonly cloth?: ClothNeed;
  readonly wearer?: Wearer;
  /** mm; null: not known. */
  readonly bustDifference?: number | null;
}

export interface Question {
  readonly ask: keyof Asks;
  /** The pattern cannot be kept before it is answered. */
  readonly required: boolean;
}

/** The questions of a garment in the order in which they are asked: what decides most first. */
export function importQuestions(garment: GarmentKind, { wearer }: Answers): readonly Question[] {
  const bust = garmentKind(garment).covers.includes('bust') && wearer !== 'man' && wearer !== 'child';
  return [
    ...REQUIRED_ASKS.map((ask) => ({ ask, required: true })),
    ...(bust ? [{ ask: 'bustDifference', required: false } as const] : []),
  ];
}

/** What is still to be answered before the pattern can be kept, in the order asked. */
export const stillMissing = (garment: GarmentKind, answers: Answers): readonly (keyof Asks)[] =>
  importQuestions(garment, answers)
    .filter(({ ask, required }) => required && answers[ask] === undefined)
    .map(({ ask }) => ask);

/** The answers with one more, or with one taken back. */
export function withAnswer<K extends keyof Answers>(
  answers: Answers,
  ask: K,
  value: Answers[K] | undefined,
): Answers {
  const { [ask]: _, ...rest } = answers;
  return value === undefined ? rest : { ...rest, [ask]: value };
}

/** The answers as corrections of what was found. Where the bust is not asked about, nothing is said of it; unanswered it is not known, whatever the file says. */
export function answered(
  garment: GarmentKind,
  answers: Answers,
): Pick<Corrections, 'included' | 'cloth' | 'wearer' | 'bustDifference'> {
  const { included, cloth, wearer } = answers;
  const asked = importQuestions(garment, answers).some(({ ask }) => ask === 'bustDifference');
  return {
    ...(included === undefined ? {} : { included }),
    ...(cloth ? { cloth } : {}),
    ...(wearer ? { wearer } : {}),
    bustDifference: asked ? (answers.bustDifference ?? null) : null,
  };
}
