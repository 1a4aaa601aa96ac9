import {
  called,
  findingMaker,
  figure,
  len,
  levelWord,
  measureWord,
  percent,
  plural,
  t,
  type MeasureId,
  type Phrase,
} from '../garment/index.ts';

type At = { readonly level: string };
type Waist = 'natural' | 'iso';

const WAISTS: Readonly<Record<Waist, Phrase>> = {
  natural: t`the natural waist, where a tied cord settles`,
  iso: t`the ISO waist, midway between the last rib and the hip bone`,
};
/**
 * No figure: the open survey measured the natural waist and the navel's, 74 mm and 66 mm apart on average in women, and ISO 8559-1 puts its
 * waist above the navel. How far apart the two are that are meant here, no source open to us says.
 */
const WAISTS_APART = t`The ISO waist usually lies lower and is a little larger; how much differs from body to body.`;

/** What stands in where the pattern or the chart is silent. */
export type Assumed =
  | { readonly ease: 'neighbour'; readonly level: string }
  | { readonly ease: 'none' }
  | { readonly ease: 'least'; readonly source: string };

const assumedEase = (it: Assumed): Phrase =>
  it.ease === 'neighbour'
    ? t`the ease at the ${levelWord(it.level)}`
    : it.ease === 'none'
      ? t`no ease`
      : t`the least wearing ease published (${called(it.source)})`;

/** The sentences of this room. */
export const FIT_WORDS = {
  'unknown-size': ({ size, level }: { size: string; level: string | null }) =>
    t`Size "${called(size)}" was chosen${level === null ? t`` : t` for the ${levelWord(level)}`}, but the pattern has no such size.`,
  'sizes-far-apart': (v: {
    upper: string;
    lower: string;
    upperSize: string;
    lowerSize: string;
    apart: number;
  }) =>
    t`${levelWord(v.upper)} and ${levelWord(v.lower)} are ${figure(v.apart, 1)} sizes apart (${called(v.upperSize)} and ${called(v.lowerSize)}). Beyond two sizes alter rather than blend, and make a test garment.`,
  'hip-depth-assumed': ({ depth }: { depth: number }) =>
    t`How far the hip lies below the waist was not measured; ${len(depth)} is taken. Please measure it.`,
  'sleeve-tight': (v: {
    finished: number;
    arm: number;
    least: number;
    short: number;
    source: string | null;
  }) =>
    t`The sleeve is ${len(v.finished)} round the upper arm in the size that the ${levelWord('bust')} takes; an arm of ${len(v.arm)} needs ${len(v.least)} (${v.source === null ? t`half of what the fabric stretches` : v.source === '' ? t`no ease` : t`${called(v.source)}`}). Widen the upper arm by ${len(v.short)} or more with an alteration.`,
  'table-differs': ({ level, off, size }: At & { off: number; size: string }) =>
    t`At the ${levelWord(level)} the pieces measure ${len(Math.abs(off))} ${off > 0 ? t`larger` : t`smaller`} than the table says in size ${called(size)}. What the pieces measure is used.`,
  'finished-assumed': ({ level, assumed }: At & { assumed: Assumed }) =>
    t`The pattern prints no finished ${levelWord(level)}; the body size plus ${assumedEase(assumed)} is assumed. Measure the pieces there to be sure.`,
  'ease-assumed': ({ level, assumed }: At & { assumed: Assumed }) =>
    t`The size chart has no body ${levelWord(level)}; ${assumedEase(assumed)} is assumed there.`,
  'front-back-length': ({ off }: { off: number }) =>
    t`Front and back change in length by amounts ${len(Math.abs(off))} apart, so their side edges would end at different heights. Taper the change along the side edges or take it in a wedge, and walk the side seam again.`,
  'floor-and-hem': ({ measure }: { measure: MeasureId }) =>
    t`The ${measureWord(measure)} of the body goes to the floor, the pattern’s to its hem, and nothing says how far above the floor that is: the two are not compared. Measure trousers that are worn as long as these should be.`,
  'length-missing': ({ measure }: { measure: MeasureId }) =>
    t`The ${measureWord(measure)} was not measured. Girths say next to nothing about lengths (survey data: correlation below 0.2): please take it.`,
  'measure-missing': ({ level, size }: At & { size: string }) =>
    t`The ${levelWord(level)} was not measured; it is cut at the base size, ${called(size)}.`,
  'opening-unmeasured': ({ opening, measure }: { opening: string; measure: MeasureId }) =>
    t`The ${called(opening)} must pass the ${measureWord(measure)}, which was not measured.`,
  'opening-too-small': (v: {
    opening: string;
    measure: MeasureId;
    finished: number;
    stretched: number;
    girth: number;
    usual: boolean;
  }) =>
    t`The ${called(v.opening)} is ${len(v.finished)} and stretches to ${len(v.stretched)}: it does not pass the ${measureWord(v.measure)} of ${len(v.girth)}${v.usual ? t` (not measured; a usual one is taken)` : t``}. Widen it, or give it a fastening.`,
  'woven-for-knit': ({ stretch }: { stretch: number }) =>
    t`This pattern needs a knit that stretches ${percent(stretch)}. A woven can't take its place: choose a knit, or a pattern for wovens.`,
  'stretch-unknown': ({ stretch }: { stretch: number }) =>
    t`The fabric's stretch is not known; the pattern's ${percent(stretch)} is taken. Test it: fold, hold ${len(101.6)} crosswise, stretch it as far as it goes without distortion; to ${len(127)} is ${percent(0.25)}.`,
  'stretch-short': ({ has, asks }: { has: number; asks: number }) =>
    t`The fabric stretches ${percent(has)}; the pattern asks for ${percent(asks)}. Where it is smaller than the body it is made less small, in proportion.`,
  'knit-for-woven': () =>
    t`The pattern is drafted for wovens; in a knit it will be roomier than it needs to be.`,
  'waists-differ': ({ body, chart }: { body: Waist; chart: Waist }) =>
    t`The body was measured at ${WAISTS[body]}; the size chart means ${WAISTS[chart]}. ${WAISTS_APART} Measure again where the chart does.`,
  'which-waist': ({ body, chart }: { body: Waist | 'unsaid'; chart: Waist | 'unsaid' }) => {
    const who =
      body !== 'unsaid'
        ? t`meant by the size chart`
        : chart !== 'unsaid'
          ? t`measured`
          : t`measured, and which the size chart means`;
    const said =
      body !== 'unsaid'
        ? t` The body's is ${WAISTS[body]}.`
        : chart !== 'unsaid'
          ? t` The size chart means ${WAISTS[chart]}.`
          : t``;
    return t`Which waist was ${who}: ${WAISTS.natural}, or ${WAISTS.iso}?${said} ${WAISTS_APART} They are taken to be the same.`;
  },
  'nowhere-to-go': ({ level, residual }: At & { residual: number }) =>
    t`At the ${levelWord(level)} ${len(Math.abs(residual))} ${residual > 0 ? t`more` : t`less`} is wanted all round, but no seam there may move. Let a seam move, or choose another size there.`,
  'edge-change-large': ({ level, change, most }: At & { change: number; most: number }) =>
    t`At the ${levelWord(level)} each cut edge would move by up to ${len(Math.abs(change))}; beyond ${len(most)} a seam loses its line. Let more seams share it, cut the level at another size, or alter inside the piece.`,
  'allowance-short': ({ level, wanted, allowance }: At & { wanted: number; allowance: number }) =>
    t`At the ${levelWord(level)} ${len(wanted)} per cut edge is wanted from an allowance of ${len(allowance)}: it is not there. Draw a new line before cutting, or piece it out.`,
  'stretch-limits': ({ level, girth }: At & { girth: number }) =>
    t`At the ${levelWord(level)} the pattern would be tighter than this fabric can be worn: it is made ${len(girth)} all round, the smallest that half its stretch allows.`,
  'too-tight-for-fabric': ({ level, short, least }: At & { short: number; least: number }) =>
    t`At the ${levelWord(level)} the garment would be ${len(short)} smaller than this fabric can be worn; it needs at least ${len(least)} all round. Tight garments can harm: leave room at waist, neck and wrist.`,
  'below-wearing-ease': (v: At & { ease: number; least: number; chosen: boolean; source: string }) =>
    t`At the ${levelWord(v.level)} ${len(v.ease)} of ease is ${v.chosen ? t`asked for` : t`left by the pattern`}; to breathe, sit and reach a woven needs ${len(v.least)} at least (${called(v.source)}).`,
  'bust-fuller': ({ excess, size }: { excess: number; size: string }) =>
    t`The bust is ${len(excess)} fuller than size ${called(size)} is made for. A bust alteration gives it room where it is needed, and the seams then take that much less; wider side seams would only give room under the arm.`,
  'height-wanted': () =>
    t`This pattern's sizes go by height, and the ${measureWord('stature')} was not measured: the girths choose instead. Please measure it.`,
  'base-unknown': () =>
    t`No measure that both the body and the size chart have can choose a size: measure the ${levelWord('bust')} (or the hip for skirts and trousers), or choose a size.`,
  'outside-sizes': ({ level, over, end }: At & { over: number; end: 'largest' | 'smallest' }) =>
    t`At the ${levelWord(level)} the body lies ${len(Math.abs(over))} beyond the ${end === 'largest' ? t`largest` : t`smallest`} size. Proportions of the pattern are a guess out there; make a test garment.`,
  'body-assumed': ({ level, girth }: At & { girth: number }) =>
    t`The ${levelWord(level)} was not measured; ${len(girth)} is taken, between the waist and the hip. Please measure it.`,
};

export const fitFinding = findingMaker(FIT_WORDS);

/** `+ 1 in` or `- 1 in`, for adding to something said before. */
export const plus = (mm: number): Phrase => t`${mm < 0 ? t`-` : t`+`} ${len(Math.abs(mm))}`;

/** `1 seam`, `2 seams`. */
export const seamsWord = (n: number): Phrase => t`${n} ${plural(n, t`seam`, t`seams`)}`;
