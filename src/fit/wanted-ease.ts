import { MM_PER, say, type Finding, type Why } from '../garment/index.ts';
import { FIT_CATEGORIES_SOURCE, KNIT_SOURCE } from './ease-table.ts';
import type { PlanInput } from './input.ts';
import { closeReduction, fabricReduction, smallestGirth, usefulShare } from './stretch.ts';
import { tellFor } from './tell.ts';
import { categoryBounds, categoryOf, easeRow } from './wearing-ease.ts';

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
  readonly name: string;
  readonly body: number;
  /** Pattern ease at the base size and the chart's body girth there, mm. */
  readonly own: number;
  readonly chart: number;
}

/** The category asked for, where the trade's chart gives it; the waist of an upper garment follows the change at the bust. */
function byCategory(input: PlanInput, at: Level, ownBust: number | null): { ease: number; why: Why } | null {
  const { category } = input.choices;
  if (category === undefined) return null;
  const tell = tellFor(input.body.show);
  if (input.cloth.kind === 'knit' && category === 'close' && input.fabric.stretch !== undefined) {
    const reduction = closeReduction(input.fabric.stretch);
    const ease = -at.body * reduction;
    return {
      ease,
      why: {
        sentence: `Close in a knit that stretches ${Math.round(input.fabric.stretch * 100)} %: made ${Math.round(reduction * 100)} % smaller than the body, ${tell(at.body)} x ${reduction} = ${tell(-ease)}.`,
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
        sentence: `${words(category)} at the ${at.name} means the pattern's ${tell(at.own)} of ease becomes ${tell(direct)}.`,
        source: FIT_CATEGORIES_SOURCE,
      },
    };
  const bust = ownBust === null || at.level !== 'waist' ? null : into(ownBust, 'bust');
  if (bust === null) return null;
  const ease = at.own + bust - ownBust!;
  return {
    ease,
    why: {
      sentence: `The chart of fit categories has no waist; it changes as much as the bust: ${tell(at.own)} becomes ${tell(ease)}.`,
      source: FIT_CATEGORIES_SOURCE,
    },
  };
}

const words = (category: string): string => category[0]!.toUpperCase() + category.slice(1).replace('-', ' ');

/** A knit pattern that is smaller than its body: the same share smaller than this one, less if the fabric stretches less. */
function byStretch(
  input: PlanInput,
  at: Level,
): { ease: number; why: Why; findings: readonly Finding[] } | null {
  if (input.cloth.kind !== 'knit' || at.own >= 0 || at.chart <= 0) return null;
  const tell = tellFor(input.body.show);
  const own = -at.own / at.chart;
  const reduction = fabricReduction(own, input.cloth, input.fabric);
  const stretch = input.fabric.stretch ?? input.cloth.stretch;
  const least = smallestGirth(at.body, stretch, usefulShare(input.fabric));
  const target = Math.max(at.body * (1 - reduction), least);
  const percent = (share: number): string => `${(share * 100).toFixed(1)} %`;
  const less = reduction < own - 1e-9 ? `, ${percent(reduction)} in this fabric, which stretches less` : '';
  const why = {
    sentence: `The pattern is ${percent(own)} smaller than its body${less}: ${tell(at.body)} x ${(target / at.body).toFixed(3)} = ${tell(target)}.`,
    source: 'reduction from the pattern and the fabric’s stretch',
  };
  if (target === least && at.body * (1 - reduction) < least - HAIR) {
    const finding: Finding = {
      code: 'stretch-limits',
      severity: 'warning',
      where: { level: at.level },
      amount: least - at.body * (1 - reduction),
      message: `At the ${at.name} the pattern would be tighter than this fabric can be worn: it is made ${say(target)} all round, the smallest that half its stretch allows.`,
    };
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
    return [
      {
        code: 'too-tight-for-fabric',
        severity: 'error',
        where,
        amount: short,
        message: `At the ${at.name} the garment would be ${say(short)} smaller than this fabric can be worn; it needs at least ${say(least)} all round. Tight garments can harm: leave room at waist, neck and wrist.`,
      },
    ];
  }
  const row = easeRow(at.level, input.garment);
  if (row === null || ease >= row.least * MM_PER.in - HAIR) return [];
  const least = row.least * MM_PER.in;
  const who = chosen ? 'asked for' : 'left by the pattern';
  return [
    {
      code: 'below-wearing-ease',
      severity: chosen ? 'error' : 'warning',
      where,
      amount: ease - least,
      message: `At the ${at.name} ${say(ease)} of ease is ${who}; to breathe, sit and reach a woven needs ${say(least)} at least (${row.source}).`,
    },
  ];
}

/**
 * The ease wanted at a level: what was asked for by hand, else by fit category, else (a knit smaller than the body) the same share smaller,
 * else the pattern's own at the base size.
 * @param ownBust the pattern's own ease at the bust, which the waist follows when a category is asked for
 */
export function wantedEase(input: PlanInput, at: Level, ownBust: number | null): WantedEase {
  const tell = tellFor(input.body.show);
  const asked = Object.hasOwn(input.choices.ease, at.level) ? input.choices.ease[at.level]! : null;
  if (asked !== null)
    return {
      ease: asked,
      why: { sentence: `${tell(asked)} of ease was asked for; the pattern's own is ${tell(at.own)}.` },
      findings: bounds(input, at, asked, true),
    };
  const category = byCategory(input, at, ownBust);
  if (category !== null)
    return { ...category, findings: bounds(input, at, category.ease, category.ease < at.own - HAIR) };
  const stretch = byStretch(input, at);
  if (stretch !== null)
    return { ...stretch, findings: [...stretch.findings, ...bounds(input, at, stretch.ease, false)] };
  const called = categoryOf(at.own, at.level, input.garment);
  const kind = called === null ? '' : `: the trade calls that ${words(called).toLowerCase()}`;
  return {
    ease: at.own,
    why: {
      sentence: `The pattern's own ease, ${tell(at.own)} over its body of ${tell(at.chart)}${kind}.`,
      source: 'finished girth less size chart body, at the base size',
    },
    findings: bounds(input, at, at.own, false),
  };
}
