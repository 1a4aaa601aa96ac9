import type { Body } from './measure/body.ts';
import type { PlanChoices } from './fitting.ts';
import { fromShoulder } from './garment-kind-table.ts';
import { LEVELS } from './level.ts';
import type { Pattern } from './pattern.ts';
import { called, len, t, type Phrase } from './words/phrase.ts';

/** Something that can hurt, said wherever the garment is made, whatever the face. Sources: docs/trade.md, section 9. Local rules come first. */
export interface Caution {
  readonly code: string;
  /** What it is about, in two or three words without a capital. */
  readonly about: Phrase;
  readonly words: Phrase;
}

/** What is known of whatever is made: a fitting, or a pattern alone. */
interface Made {
  readonly pattern: Pick<Pattern, 'garment' | 'wearer' | 'cloth' | 'chart' | 'cautions' | 'nightwear'>;
  readonly body?: Pick<Body, 'wearer'>;
  readonly choices?: Pick<PlanChoices, 'category' | 'ease'>;
}

/** Longest a cord at waist or hem may hang outside its channel, mm (16 CFR 1120, ASTM F1816: 3 in). */
const CORD_MM = 75;

const forChild = ({ pattern, body }: Made): boolean => pattern.wearer === 'child' || body?.wearer === 'child';

/** Whether it is still to be asked if a child will sleep in it. */
export const nightwearUnsaid = (made: Made): boolean =>
  forChild(made) && made.pattern.nightwear === undefined;

/** Finished girth and the body it is drafted for, wherever the table gives both, in every size. */
const girthPairs = ({ chart }: Made['pattern']): readonly (readonly [finished: number, body: number])[] =>
  LEVELS.flatMap(({ level, girth }) => {
    const [finished, body] = [chart.finished[level], girth && chart.body[girth]];
    return finished && body ? finished.map((f, i) => [f, body[i] ?? null] as const) : [];
  }).filter((pair): pair is readonly [number, number] => pair[0] !== null && pair[1] !== null);

/** Whether a knit is drafted smaller than the body anywhere; where its table does not say, it may be. */
function smallerThanBody(pattern: Made['pattern']): boolean {
  const pairs = girthPairs(pattern);
  return (
    pattern.cloth.kind === 'knit' && (pairs.length === 0 || pairs.some(([finished, body]) => finished < body))
  );
}

/** Whether it cannot count as close-fitting nightwear: of a woven, larger than the body anywhere, or asked for with ease. */
const isRoomy = ({ pattern, choices }: Made): boolean =>
  pattern.cloth.kind === 'woven' ||
  girthPairs(pattern).some(([finished, body]) => finished > body) ||
  Object.values(choices?.ease ?? {}).some((ease) => ease > 0) ||
  !['close', undefined].includes(choices?.category);

/** Made smaller than the body, or asked for as close to it or closer. */
const isTight = ({ pattern, choices }: Made): boolean =>
  smallerThanBody(pattern) ||
  choices?.category === 'close' ||
  Object.values(choices?.ease ?? {}).some((ease) => ease < 0);

/** Every caution, in the order in which it is said, and what it goes with. */
const CAUTIONS: readonly (Caution & { readonly when: (made: Made) => boolean })[] = [
  {
    // 16 CFR 1615 and 1616: loungewear counts; tight-fitting only up to their own table of sizes (text of 2007 and CPSC FAQ: seen).
    code: 'child-sleepwear',
    when: (made) => forChild(made) && made.pattern.nightwear !== false,
    about: t`nightwear`,
    words: t`What a child sleeps or lounges in (nightgown, pyjamas, robe) falls under fire-safety rules in many countries: it must be close-fitting, or of cloth that passes a flame test (in the US 16 CFR 1615 and 1616). Read your country’s rules before you cut, and never add ease to close-fitting nightwear.`,
  },
  {
    code: 'roomy-nightwear',
    about: t`nightwear with ease`,
    when: (made) => forChild(made) && made.pattern.nightwear === true && isRoomy(made),
    words: t`This is larger than the body somewhere, or of a cloth that does not stretch: it does not count as close-fitting nightwear. Make it only of cloth that passes your country’s flame test.`,
  },
  {
    // 16 CFR 1120 and ASTM F1816 (CPSC FAQ: seen); EN 14682 from memory.
    code: 'child-neck-cord',
    when: (made) => forChild(made) && fromShoulder(made.pattern.garment),
    about: t`cords at the neck`,
    words: t`No cord, drawstring or tie at the hood or neck of a child’s garment: it can catch and strangle. Close it with a button, press stud or elastic (in the US 16 CFR 1120 and ASTM F1816, in Europe EN 14682; follow the rules where you live).`,
  },
  {
    code: 'child-waist-cord',
    when: forChild,
    about: t`cords at the waist`,
    words: t`A cord at the waist or hem of a child’s garment may hang at most ${len(CORD_MM)} outside its channel when the garment is spread flat, has no knot or toggle at its ends, and is sewn fast in the middle (16 CFR 1120 and ASTM F1816 in the US; in Europe EN 14682 has limits of its own). Elastic is safer; follow the rules where you live.`,
  },
  {
    // 16 CFR 1501, from memory.
    code: 'child-small-parts',
    when: forChild,
    about: t`small parts`,
    words: t`Buttons, press studs, beads and bows within a small child’s reach must be fixed so that they stay on. Nothing that can come off for a child under three (in the US 16 CFR 1501).`,
  },
  {
    code: 'tight',
    when: isTight,
    about: t`a tight fit`,
    words: t`A tight garment must still let the wearer breathe, sit and raise an arm: leave room at neck, waist and wrist. Try it in cloth before you trust the numbers, and if it marks, numbs or hurts, it is too tight.`,
  },
  {
    // From memory; no medical review was seen.
    code: 'no-compression',
    when: isTight,
    about: t`where nothing may press`,
    words: t`If the wearer is pregnant, has a stoma, is healing after an operation or has a swelling, ask how much room is comfortable and leave it; the garment must not press there. Compression wear is a medical product: Pintrue does not fit it. Ask whoever treats the wearer.`,
  },
];

/** Names that topics of older patterns had, and what they are now. */
const ONCE_CALLED: Readonly<Record<string, readonly string[]>> = {
  'small-parts': ['child-small-parts'],
  'child-drawstring': ['child-neck-cord', 'child-waist-cord'],
};

/**
 * The cautions of what is made, by rule: from wearer, kind of garment, cloth and what is asked for; and those that the pattern names itself.
 * Each once, in one order on every face. A topic that has no words here is named: nothing that may hurt is dropped.
 */
export function cautionsFor(made: Made): readonly Caution[] {
  const named = new Set(made.pattern.cautions.flatMap((topic) => ONCE_CALLED[topic] ?? [topic]));
  const known = CAUTIONS.filter(({ code, when }) => named.has(code) || when(made));
  const unknown = [...named].filter((code) => !CAUTIONS.some((c) => c.code === code));
  return [
    ...known.map(({ code, about, words }) => ({ code, about, words })),
    ...unknown.map((code) => ({
      code,
      about: t`${called(code.replaceAll('-', ' '))}`,
      words: t`The pattern’s maker warns of this. Pintrue has no words for this; ask whoever made the pattern.`,
    })),
  ];
}

/** A caution as a line among others: on paper and in a terminal. */
export const cautionLine = ({ about, words }: Caution): Phrase => t`Caution, ${about}: ${words}`;
