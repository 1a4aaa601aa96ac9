import { garmentKind } from './garment-kind-table.ts';
import type { Pattern } from './pattern.ts';
import type { Wearer } from './words/tell.ts';
import type { MeasureId } from './measure/measure-id.ts';

/** What a first plan of any garment is made from. A child's size goes by its height; a bust is measured where there is one. */
const OF_WEARER: Readonly<Record<Wearer, readonly MeasureId[]>> = {
  woman: [
    'bust-girth',
    'upper-bust-girth',
    'waist-girth',
    'hip-girth',
    'back-waist-length',
    'front-waist-length',
  ],
  man: ['bust-girth', 'waist-girth', 'hip-girth', 'back-waist-length', 'arm-length', 'neck-girth'],
  child: ['stature', 'bust-girth', 'waist-girth', 'hip-girth', 'back-waist-length', 'arm-length'],
};

/** Taken of a woman's bust only. */
const OF_A_BUST: ReadonlySet<MeasureId> = new Set([
  'upper-bust-girth',
  'under-bust-girth',
  'bust-height',
  'bust-spread',
  'front-waist-length',
]);

/** Whether a measure is asked of this wearer. */
export const askedOf = (id: MeasureId, wearer: Wearer): boolean => wearer === 'woman' || !OF_A_BUST.has(id);

/** Whether a pattern's sizes go by the height of the child that it is for (EN 13402 practice). */
export const byHeight = ({ chart }: Pick<Pattern, 'chart'>, wearer: Wearer): boolean =>
  wearer === 'child' && chart.body.stature !== undefined;

/** What is measured first, in that order: of this wearer for any garment, or for one pattern what chooses its size and where it hangs. */
export function firstMeasures(
  wearer: Wearer,
  pattern?: Pick<Pattern, 'garment' | 'chart'>,
): readonly MeasureId[] {
  if (pattern === undefined) return OF_WEARER[wearer];
  const { sizedBy, hungBy, from, legs } = garmentKind(pattern.garment);
  const ids: readonly MeasureId[] = [
    ...(byHeight(pattern, wearer) ? (['stature'] as const) : []),
    ...sizedBy,
    hungBy,
    ...(from === 'shoulder' ? (['front-waist-length'] as const) : []),
    ...(legs ? (['crotch-depth', 'inside-leg-length'] as const) : []),
  ];
  return ids.filter((id) => askedOf(id, wearer));
}
