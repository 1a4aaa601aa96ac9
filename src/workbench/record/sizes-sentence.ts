import { levelName, fromShoulder } from '../../garment/index.ts';
import type { Pattern, Plan } from '../../garment/index.ts';

const list = new Intl.ListFormat('en-GB');

/** The sizes of a plan in one sentence, each with all the places that take it: “Bust 88 at neck, shoulder, armhole and bust; Bust 92 at waist.” */
export function sizesSentence(plan: Plan, pattern: Pattern, wearer = pattern.wearer): string {
  const hung = !fromShoulder(pattern.garment);
  const places = new Map<string, string[]>();
  // Below the waist there is no neck: its size is said only where no level has one.
  if (!hung || plan.levels.length === 0)
    places.set(plan.base.size, hung ? ['every level'] : ['neck', 'shoulder', 'armhole']);
  for (const { level, size } of plan.levels)
    places.set(size, [...(places.get(size) ?? []), levelName(level, wearer).toLowerCase()]);
  const words = [...places].map(([id, at]) => `${sizeName(id, pattern)} at ${list.format(at)}`);
  return `${words.join('; ')}.`;
}

/** A label that is only a number is called a size; “Bust 88” says by itself what it is. */
function sizeName(id: string, pattern: Pattern): string {
  const label = pattern.chart.sizes.find((s) => s.id === id)?.label ?? id;
  return /[a-z]{3}/i.test(label) ? label : `Size ${label}`;
}
