import type { Level } from './piece.ts';
import type { MeasureId } from './measure/measure-id.ts';
import { MM_PER } from './words/length-unit.ts';

/**
 * Levels of a garment, top to bottom. Those with a girth name the body measure they are compared with.
 * A corner on `neck` or `shoulder` takes the base size; the girth levels take their own.
 */
export const LEVELS: readonly {
  readonly level: Level;
  readonly name: string;
  readonly girth?: MeasureId;
  /** A girth nearby that a table may give instead: a collar goes round the neck above its base. */
  readonly orGirth?: MeasureId;
  /** Round one of two limbs: pieces are cut for both, the girth is of one. */
  readonly limb?: true;
}[] = [
  { level: 'neck', name: 'neck', girth: 'neck-base-girth', orGirth: 'neck-girth' },
  { level: 'shoulder', name: 'shoulder' },
  { level: 'armhole', name: 'armhole' },
  { level: 'upper-bust', name: 'upper bust', girth: 'upper-bust-girth' },
  { level: 'bust', name: 'bust', girth: 'bust-girth' },
  { level: 'under-bust', name: 'under-bust', girth: 'under-bust-girth' },
  { level: 'waist', name: 'waist', girth: 'waist-girth' },
  { level: 'high-hip', name: 'high hip', girth: 'high-hip-girth' },
  { level: 'hip', name: 'hip', girth: 'hip-girth' },
  { level: 'crotch', name: 'crotch' },
  { level: 'thigh', name: 'thigh', girth: 'thigh-girth', limb: true },
  { level: 'knee', name: 'knee', girth: 'knee-girth', limb: true },
  { level: 'hem', name: 'hem' },
  { level: 'upper-arm', name: 'upper arm', girth: 'upper-arm-girth', limb: true },
  { level: 'elbow', name: 'elbow', girth: 'elbow-girth', limb: true },
  { level: 'wrist', name: 'wrist', girth: 'wrist-girth', limb: true },
];

/** Waist to hip along the side when nothing is known: 9 in (common practice). mm */
export const USUAL_HIP_DEPTH = 9 * MM_PER.in;

/** How many of the level a body has: 2 for a limb. A girth at a limb's level is the sum over the pieces divided by this. */
export const limbsAt = (level: Level): 1 | 2 => (LEVELS.find((l) => l.level === level)?.limb ? 2 : 1);
