import type { Alteration, Param } from '../src/alter/index.ts';
import { CATALOGUE } from '../src/alter/index.ts';
import type { ParamValue, Step } from '../src/garment/index.ts';

type AlterStep = Extract<Step, { kind: 'alter' }>;

/** Random amounts stay within what is published (a limit) where there is one, else within this share of what can be typed at all. */
const SHARE = 0.3;

function amount(param: Extract<Param, { kind: 'length' | 'angle' | 'share' }>, random: () => number): number {
  const limit = 'limit' in param ? param.limit?.most : undefined;
  const low = Math.max(param.min, limit === undefined ? param.min * SHARE : -limit);
  const high = Math.min(param.max, limit ?? param.max * SHARE);
  return low <= high ? low + (high - low) * random() : param.min + (param.max - param.min) * random();
}

function valueOf(param: Param, random: () => number): ParamValue | undefined {
  switch (param.kind) {
    case 'length':
    case 'angle':
      if (param.kind === 'length' && param.blank !== undefined && random() < 0.5) return undefined;
      return Math.round(amount(param, random) * 4) / 4;
    case 'share':
      return Math.round(amount(param, random) * 100) / 100;
    case 'choice':
      return param.choices[Math.floor(random() * param.choices.length)]!.id;
    default:
      // A piece, edge or dart: the first that fits, as when nothing is said.
      return undefined;
  }
}

/** One random step of a random (or the given) entry. */
export function randomStep(random: () => number, id: string, entry?: Alteration): AlterStep {
  const alteration = entry ?? CATALOGUE[Math.floor(random() * CATALOGUE.length)]!;
  const params: Record<string, ParamValue> = {};
  for (const param of alteration.params) {
    const value = valueOf(param, random);
    if (value !== undefined) params[param.id] = value;
  }
  return { id, kind: 'alter', entry: alteration.id, params };
}

/** One step in so many is drawn from the whole catalogue, whether it has anything to do on the garment or not. */
const ODD = 12;

/** One to eight random steps, mostly of the given entries. */
export function randomStack(random: () => number, entries: readonly Alteration[]): AlterStep[] {
  const count = 1 + Math.floor(random() * 8);
  return Array.from({ length: count }, (_, i) => {
    const entry = random() < 1 / ODD ? undefined : entries[Math.floor(random() * entries.length)];
    return randomStep(random, `s${i + 1}`, entry);
  });
}
