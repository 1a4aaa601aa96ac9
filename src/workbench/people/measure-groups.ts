import type { MeasureId } from '../../garment/index.ts';

/** The order of one tape session: what nearly every garment needs first, then by part of the body. */
export const GROUPS: readonly {
  readonly name: string;
  readonly say: string;
  readonly ids: readonly MeasureId[];
  readonly open: boolean;
}[] = [
  {
    name: 'To begin with',
    say: 'Six measures are enough for a first plan. Tape snug, not tight; over what will be worn underneath.',
    ids: [
      'bust-girth',
      'upper-bust-girth',
      'waist-girth',
      'hip-girth',
      'back-waist-length',
      'front-waist-length',
    ],
    open: true,
  },
  {
    name: 'Round the body',
    say: 'Level with the floor, all the way round.',
    ids: [
      'neck-base-girth',
      'under-bust-girth',
      'high-hip-girth',
      'upper-arm-girth',
      'elbow-girth',
      'wrist-girth',
      'head-girth',
      'hand-girth',
    ],
    open: false,
  },
  {
    name: 'Down the body',
    say: 'Lengths decide where a waist or a bust sits. They hardly follow the girths, so they are worth taking.',
    ids: [
      'stature',
      'bust-height',
      'centre-front-length',
      'side-length',
      'scye-depth',
      'hip-depth',
      'high-hip-depth',
      'arm-length',
      'elbow-length',
      'waist-to-knee',
    ],
    open: false,
  },
  {
    name: 'Across the body',
    say: 'Widths of shoulder, chest and back.',
    ids: [
      'shoulder-length',
      'shoulder-slope',
      'shoulder-width',
      'across-back',
      'across-front',
      'bust-spread',
    ],
    open: false,
  },
  {
    name: 'Front and back apart',
    say: 'From side to side over the front only. With these, fullness goes where the body has it.',
    ids: ['front-bust-arc', 'front-waist-arc', 'front-hip-arc'],
    open: false,
  },
  {
    name: 'Legs and seat',
    say: 'For trousers and long skirts.',
    ids: [
      'thigh-girth',
      'knee-girth',
      'calf-girth',
      'ankle-girth',
      'crotch-depth',
      'crotch-length',
      'crotch-length-front',
      'crotch-length-back',
      'inside-leg-length',
      'outside-leg-length',
    ],
    open: false,
  },
];

/** Measures that a body has twice, left and right: of these it is asked on which side they were taken. */
export const TWO_SIDED: ReadonlySet<MeasureId> = new Set([
  'shoulder-length',
  'shoulder-slope',
  'bust-height',
  'front-waist-length',
  'side-length',
  'hip-depth',
  'high-hip-depth',
  'upper-arm-girth',
  'elbow-girth',
  'wrist-girth',
  'hand-girth',
  'arm-length',
  'elbow-length',
  'thigh-girth',
  'knee-girth',
  'calf-girth',
  'ankle-girth',
  'inside-leg-length',
  'outside-leg-length',
  'waist-to-knee',
]);
