import type { Param } from '../entry/alteration.ts';
import { called, figure, len, t, type Part } from '../../garment/index.ts';
import type { ParamValue, Phrase } from '../../garment/index.ts';
import { alterationOf } from '../step/apply-step.ts';
import type { Ask } from './sight.ts';

/** Two statements nearer than this say the same: less than a tape can tell. */
const SAME_MM = 1.6;

/** An alteration that notes ask for, their amounts brought together. */
export interface Wanted {
  readonly from: string[];
  readonly entry: string;
  /** What the notes say. */
  params: Record<string, ParamValue>;
  /** What holds where no note says anything. */
  readonly otherwise: Record<string, ParamValue>;
  readonly why: Phrase[];
  readonly conflicts: Phrase[];
}

function pushNew(phrases: Phrase[], phrase: Phrase): void {
  if (!phrases.some((p) => JSON.stringify(p) === JSON.stringify(phrase))) phrases.push(phrase);
}

/** Amounts of two statements for one alteration brought together: what only one says is taken, what both say is averaged and told. */
export function merge(into: Wanted, ask: Ask, from: string): void {
  into.from.push(from);
  pushNew(into.why, ask.why);
  if (ask.mind) pushNew(into.conflicts, ask.mind);
  for (const [id, value] of Object.entries(ask.otherwise ?? {})) into.otherwise[id] ??= value;
  for (const [id, value] of Object.entries(ask.params)) {
    if (value === undefined) continue;
    const name = nameOf(ask.entry, id);
    const amount = (n: number): Part & object => (isLength(ask.entry, id) ? len(n) : figure(n));
    const have = into.params[id];
    if (have === undefined) into.params[id] = value;
    else if (typeof have === 'number' && typeof value === 'number') {
      if (Math.abs(have - value) <= SAME_MM) continue;
      const mean = (have + value) / 2;
      into.conflicts.push(
        have * value < 0
          ? t`Two observations say the opposite (${amount(have)} and ${amount(value)} for ${name}); look again before accepting. The mean is ${amount(mean)}.`
          : t`Two observations give different amounts for ${name} (${amount(have)} and ${amount(value)}); the mean of ${amount(mean)} is proposed.`,
      );
      into.params[id] = mean;
    } else if (have !== value) {
      into.conflicts.push(
        t`Two observations name different places for ${name} (${called(String(have))} and ${called(String(value))}); the first is kept.`,
      );
    }
  }
}

const paramOf = (entry: string, param: string): Param | undefined =>
  alterationOf(entry)?.params.find((p) => p.id === param);
const nameOf = (entry: string, param: string): Phrase => paramOf(entry, param)?.name ?? t`${called(param)}`;
const isLength = (entry: string, param: string): boolean => paramOf(entry, param)?.kind === 'length';

/** Alterations of these are kept apart by these parameters: two levels are two alterations, and so are its front and its back. */
const APART: Readonly<Record<string, readonly string[]>> = {
  'width-seams': ['level', 'front'],
  'leg-width': ['level'],
  'neckline-gap': ['half'],
  'armhole-gap': ['half'],
  'low-shoulder': ['side'],
  'high-hip': ['side'],
};

/** Notes with the same key ask for the same alteration. */
export const keyOf = (ask: Ask): string =>
  [ask.entry, ...(APART[ask.entry] ?? []).map((id) => String(ask.params[id]))].join(' ');

export const fresh = (entry: string): Wanted => ({
  from: [],
  entry,
  params: {},
  otherwise: {},
  why: [],
  conflicts: [],
});
