import { called, len, t, type Phrase } from './words/phrase.ts';

/** Something that can hurt, said wherever the garment is made, whatever the face. Sources: docs/trade.md, section 9. Local rules come first. */
export interface Caution {
  /** The topic, as patterns name it. */
  readonly id: string;
  readonly words: Phrase;
}

/** Longest a cord at waist or hem may hang outside its channel, mm (16 CFR 1120, ASTM F1816: 3 in). */
const CORD_MM = 75;

const CAUTIONS: readonly Caution[] = [
  {
    id: 'child-drawstring',
    words: t`No cords or drawstrings at the hood or neck of children’s clothes: they catch and strangle. At waist or hem at most ${len(CORD_MM)} outside the channel when it is spread flat, no knot or toggle at the ends, and the cord sewn fast. Use elastic, buttons or snaps, and follow your country’s rules.`,
  },
  {
    id: 'child-sleepwear',
    words: t`Children’s nightwear falls under fire-safety and fit rules in many countries (snug fit, or treated cloth): check yours before you cut. Never add ease to tight-fitting nightwear.`,
  },
  {
    id: 'child-small-parts',
    words: t`Buttons, beads and bows within a small child’s reach must be sewn to stay; none that can come off for a child under three.`,
  },
  {
    id: 'tight',
    words: t`A tight garment must still let the wearer breathe, sit and raise an arm: leave room at neck, waist and wrist. Try it in cloth before you trust the numbers, and if it marks, numbs or hurts, it is too tight.`,
  },
];

/** Names that topics had before: `small-parts` was the command line's own. */
const ONCE_CALLED: Readonly<Record<string, string>> = { 'small-parts': 'child-small-parts' };

/** The cautions of these topics in the order given, each once. A topic that has no words here is named: nothing that may hurt is dropped. */
export function cautionsFor(topics: readonly string[]): readonly Caution[] {
  const ids = new Set(topics.map((topic) => ONCE_CALLED[topic] ?? topic));
  return [...ids].map(
    (id) =>
      CAUTIONS.find((c) => c.id === id) ?? {
        id,
        words: t`Take care: ${called(id.replaceAll('-', ' '))}. Pintrue has no words for this; ask whoever made the pattern.`,
      },
  );
}
