import {
  capital,
  figure,
  keyWord,
  len,
  levelWord,
  MM_PER,
  percent,
  t,
  type Finding,
  type Part,
  type Why,
} from '../garment/index.ts';
import { FIT_CATEGORIES_SOURCE, KNIT_SOURCE } from './ease-table.ts';
import type { PlanInput } from './input.ts';
import { closeReduction, fabricReduction, smallestGirth, usefulShare } from './stretch.ts';
import { categoryBounds, categoryOf, easeRow } from './wearing-ease.ts';
import { fitFinding } from './words-table.ts';

export interface WantedEase {
  /** mm all round at this body. */
  readonly ease: number;
  readonly why: Why;
  readonly findings: readonly Finding[];
}

/** A tenth of a millimetre: below what anyone can cut, above the rounding of inches. */
const HAIR = 0.1;

interface Level {
  readonly level: string;
  readonly body: number;
  /** Pattern ease at the base size and the chart's body girth there, mm. */
  readonly own: number;
  readonly chart: number;
}

/** The category asked for, where the trade's chart gives it; the waist of an upper garment follows the change at the bust. */
function byCategory(input: PlanInput, at: Level, ownBust: number | null): { ease: number; why: Why } | null {
  const { category } = input.choices;
  if (category === undefined) return null;
  if (input.cloth.kind === 'knit' && category === 'close' && input.fabric.stretch !== undefined) {
    const reduction = closeReduction(input.fabric.stretch);
    const ease = -at.body * reduction;
    return {
      ease,
      why: {
        sentence: t`Close in a knit that stretches ${percent(input.fabric.stretch)}: made ${percent(reduction)} smaller than the body, ${len(at.body)} x ${reduction} = ${len(-ease)}.`,
        source: KNIT_SOURCE,
      },
    };
  }
  const into = (own: number, level: string): number | null => {
    const bounds = categoryBounds(category, level, input.garment);
    return bounds === null ? null : Math.min(Math.max(own, bounds.least), bounds.most);
  };
  const direct = into(at.own, at.level);
  if (direct !== null)
    return {
      ease: direct,
      why: {
        sentence: t`${fitWord(category)} at the ${levelWord(at.level)} means the pattern's ${len(at.own)} of ease becomes ${len(direct)}.`,
        source: FIT_CATEGORIES_SOURCE,
      },
    };
  const bust = ownBust === null || at.level !== 'waist' ? null : into(ownBust, 'bust');
  if (bust === null) return null;
  const ease = at.own + bust - ownBust!;
  return {
    ease,
    why: {
      sentence: t`The chart of fit categories has no waist; it changes as much as the ${levelWord('bust')}: ${len(at.own)} becomes ${len(ease)}.`,
      source: FIT_CATEGORIES_SOURCE,
    },
  };
}

/** A fit category as it begins a sentence: `Semi fitted`. */
const fitWord = (category: string): Part & object => capital(t`${keyWord('category', category)}`);

/** A knit pattern that is smaller than its body: the same share smaller than this one, less if the fabric stretches less. */
function byStretch(
  input: PlanInput,
  at: Level,
): { ease: number; why: Why; findings: readonly Finding[] } | null {
  if (input.cloth.kind !== 'knit' || at.own >= 0 || at.chart <= 0) return null;
  const own = -at.own / at.chart;
  const reduction = fabricReduction(own, input.cloth, input.fabric);
  const stretch = input.fabric.stretch ?? input.cloth.stretch;
  const least = smallestGirth(at.body, stretch, usefulShare(input.fabric));
  const target = Math.max(at.body * (1 - reduction), least);
  const less =
    reduction < own - 1e-9 ? t`, ${percent(reduction, 1)} in this fabric, which stretches less` : t``;
  const why = {
    sentence: t`The pattern is ${percent(own, 1)} smaller than its body${less}: ${len(at.body)} x ${figure(target / at.body, 3, 3)} = ${len(target)}.`,
    source: 'reduction from the pattern and the fabric’s stretch',
  };
  if (target === least && at.body * (1 - reduction) < least - HAIR) {
    const finding = fitFinding(
      'stretch-limits',
      'warning',
      { level: at.level },
      { level: at.level, girth: target },
      { amount: least - at.body * (1 - reduction) },
    );
    return { ease: target - at.body, why, findings: [finding] };
  }
  return { ease: target - at.body, why, findings: [] };
}

/** What is wrong with an amount of ease: below wearing ease on a woven, beyond the stretch of a knit. `chosen`: a person asked for it. */
function bounds(input: PlanInput, at: Level, ease: number, chosen: boolean): readonly Finding[] {
  const where = { level: at.level };
  if (input.fabric.kind === 'knit') {
    const least = smallestGirth(at.body, input.fabric.stretch ?? 0, usefulShare(input.fabric));
    const short = least - (at.body + ease);
    if (short <= HAIR || ease >= 0) return [];
    const values = { level: at.level, short, least };
    return [fitFinding('too-tight-for-fabric', 'error', where, values, { amount: short })];
  }
  const row = easeRow(at.level, input.garment);
  if (row === null || ease >= row.least * MM_PER.in - HAIR) return [];
  const least = row.least * MM_PER.in;
  const values = { level: at.level, ease, least, chosen, source: row.source };
  return [
    fitFinding('below-wearing-ease', chosen ? 'error' : 'warning', where, values, { amount: ease - least }),
  ];
}

/**
 * The ease wanted at a level: what was asked for by hand, else by fit category, else (a knit smaller than the body) the same share smaller,
 * else the pattern's own at the base size.
 * @param ownBust the pattern's own ease at the bust, which the waist follows when a category is asked for
 */
export function wantedEase(input: PlanInput, at: Level, ownBust: number | null): WantedEase {
  const asked = Object.hasOwn(input.choices.ease, at.level) ? input.choices.ease[at.level]! : null;
  if (asked !== null)
    return {
      ease: asked,
      why: { sentence: t`${len(asked)} of ease was asked for; the pattern's own is ${len(at.own)}.` },
      findings: bounds(input, at, asked, true),
    };
  const category = byCategory(input, at, ownBust);
  if (category !== null)
    return { ...category, findings: bounds(input, at, category.ease, category.ease < at.own - HAIR) };
  const stretch = byStretch(input, at);
  if (stretch !== null)
    return { ...stretch, findings: [...stretch.findings, ...bounds(input, at, stretch.ease, false)] };
  const named = categoryOf(at.own, at.level, input.garment);
  const kind = named === null ? t`` : t`: the trade calls that ${keyWord('category', named)}`;
  return {
    ease: at.own,
    why: {
      sentence: t`The pattern's own ease, ${len(at.own)} over its body of ${len(at.chart)}${kind}.`,
      source: 'finished girth less size chart body, at the base size',
    },
    findings: bounds(input, at, at.own, false),
  };
}
