import type { Fitting } from '../../garment/index.ts';

/** Usual cautions by topic (trade.md, safety). Local rules come first. */
const SAY: Readonly<Record<string, string>> = {
  'child-drawstring':
    'No drawstrings or cords at the hood, neck or waist of children’s clothes: they catch and strangle. Use elastic, buttons or snaps, and follow your country’s rules.',
  'child-sleepwear':
    'Children’s sleepwear falls under fire-safety rules in many countries (snug fit or treated cloth). Check yours before you cut.',
  'child-small-parts':
    'Buttons, beads and bows within a small child’s reach must be sewn to stay; none for children under three.',
  tight:
    'A tight garment must still let the wearer breathe, sit and raise an arm. Try it in cloth before you trust the numbers, and stop where it hurts.',
};

/** Where work can hurt, it is said, once and at the top. */
export function Cautions({ fitting }: { fitting: Fitting }) {
  const topics = fitting.pattern.cautions.filter((c) => c in SAY);
  if (topics.length === 0) return null;
  return (
    <section className="said cautions" aria-label="Cautions for this garment">
      <ul>
        {topics.map((t) => (
          <li key={t}>{SAY[t]}</li>
        ))}
      </ul>
    </section>
  );
}
