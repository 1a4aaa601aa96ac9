import type { Level } from './piece.ts';
import type { MeasureId } from './measure-id.ts';

/**
 * Levels of a garment, top to bottom. Those with a girth name the body measure they are compared with.
 * A corner on `neck` or `shoulder` takes the base size; the girth levels take their own.
 */
export const LEVELS: readonly { readonly level: Level; readonly name: string; readonly girth?: MeasureId }[] =
  [
    { level: 'neck', name: 'neck', girth: 'neck-base-girth' },
    { level: 'shoulder', name: 'shoulder' },
    { level: 'armhole', name: 'armhole' },
    { level: 'upper-bust', name: 'upper bust', girth: 'upper-bust-girth' },
    { level: 'bust', name: 'bust', girth: 'bust-girth' },
    { level: 'under-bust', name: 'under-bust', girth: 'under-bust-girth' },
    { level: 'waist', name: 'waist', girth: 'waist-girth' },
    { level: 'high-hip', name: 'high hip', girth: 'high-hip-girth' },
    { level: 'hip', name: 'hip', girth: 'hip-girth' },
    { level: 'crotch', name: 'crotch' },
    { level: 'thigh', name: 'thigh', girth: 'thigh-girth' },
    { level: 'knee', name: 'knee', girth: 'knee-girth' },
    { level: 'hem', name: 'hem' },
    { level: 'upper-arm', name: 'upper arm', girth: 'upper-arm-girth' },
    { level: 'elbow', name: 'elbow', girth: 'elbow-girth' },
    { level: 'wrist', name: 'wrist', girth: 'wrist-girth' },
  ];
