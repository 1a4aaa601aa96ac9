import { HALVES, keyWord, len, listOf, t, type Phrase } from '../../garment/index.ts';
import type { Wanted } from './wanted.ts';

const num = (wanted: Wanted | undefined, id: string): number => {
  const v = wanted?.params[id] ?? wanted?.otherwise[id];
  return typeof v === 'number' ? v : 0;
};

/** A side seam is of the front and of the back. What was noted at the side of one half only holds for the other, which goes along all across. */
function otherHalfGoesAlong(wanted: readonly Wanted[]): void {
  const above = wanted.find((w) => w.entry === 'length-above-waist');
  if (!above) return;
  const silent = HALVES.filter((half) => above.params[half] === undefined && num(above, half) !== 0);
  if (silent.length === 0) return;
  const names = listOf(
    silent.map((half) => t`${keyWord('half', half)}`),
    'and',
  );
  above.conflicts.push(
    t`Front and back meet at the side seam, and nothing was noted of the centre ${names}: there it changes by ${len(Math.abs(num(above, 'side')))} as well, so that the centre stays straight. How does it sit there?`,
  );
}

/** One width noted all round and once more in front or at the back: both would be added. */
function warnTwice(wanted: readonly Wanted[]): void {
  const widths = wanted.filter((w) => w.entry === 'width-seams');
  for (const all of widths.filter((w) => w.params['front'] === 0.5))
    if (widths.some((w) => w !== all && w.params['level'] === all.params['level']))
      all.conflicts.push(
        t`The width here is noted all round, and in front or at the back as well: both are added. Strike out one of the notes if they say the same.`,
      );
}

/**
 * The hem is seen as it hangs now: what is taken out above the waist lifts it, so that much more is let down below
 * (docs/formulas.md: lengthen below the waist by the difference).
 */
function hemAllowsForWaist(wanted: readonly Wanted[]): void {
  const above = wanted.find((w) => w.entry === 'length-above-waist');
  const below = wanted.find((w) => w.entry === 'length-below-waist');
  if (!above) return;
  const at = num(above, 'side');
  if (at === 0) return;
  if (!below) {
    above.conflicts.push(
      t`The hem ${at < 0 ? t`rises` : t`drops`} by ${len(Math.abs(at))} at the side with it. If it should stay where it is, state how far the hem is off.`,
    );
    return;
  }
  const seen = num(below, 'amount');
  below.params['amount'] = seen - at;
  below.why.push(
    t`Of the ${len(Math.abs(seen - at))}, ${len(Math.abs(at))} make good what the waist alteration takes (${at < 0 ? t`the hem would rise` : t`the hem would drop`} by it).`,
  );
}

/** Pairs that answer one sight twice, or hide one another (trade.md 5.9, 5.10, 5.14). */
const TOGETHER: readonly (readonly [string, string, Phrase])[] = [
  [
    'length-above-waist',
    'swayback',
    t`Both take length out of the centre back. Do the length first, then look whether folds are left.`,
  ],
  [
    'width-seams hip',
    'swayback',
    t`Too tight a hip makes the same folds above the seat: let the hip out first and look again.`,
  ],
  [
    'bust-side-dart',
    'armhole-gap',
    t`A fuller front often closes the armhole gap by itself: do the bust first.`,
  ],
  ['bust-panel', 'armhole-gap', t`A fuller front often closes the armhole gap by itself: do the bust first.`],
  [
    'bust-side-dart',
    'width-seams bust',
    t`Both add width at the bust: state only what is still missing after the bust alteration.`,
  ],
  [
    'bust-panel',
    'width-seams bust',
    t`Both add width at the bust: state only what is still missing after the bust alteration.`,
  ],
  ['back-width', 'shoulder-length', t`Both change the back shoulder: do the back width first.`],
  [
    'shoulder-slope',
    'forward-shoulder',
    t`Both move the shoulder tip: make them in this order and walk the armhole afterwards.`,
  ],
];

function warnTogether(wanted: readonly Wanted[]): void {
  const find = (key: string): Wanted | undefined => {
    const [entry, word] = key.split(' ');
    return wanted.find((w) => w.entry === entry && (word === undefined || w.params['level'] === word));
  };
  for (const [a, b, words] of TOGETHER) {
    const [one, two] = [find(a), find(b)];
    if (!one || !two) continue;
    one.conflicts.push(words);
    two.conflicts.push(words);
  }
}

/** What notes say to one another once all are heard: amounts that follow from others', and what not to do at once. */
export function betweenNotes(wanted: readonly Wanted[]): void {
  otherHalfGoesAlong(wanted);
  hemAllowsForWaist(wanted);
  warnTogether(wanted);
  warnTwice(wanted);
}
