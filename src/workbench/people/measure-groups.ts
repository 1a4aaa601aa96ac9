import { askedOf, firstMeasures, type Body, type MeasureId, type Pattern } from '../../garment/index.ts';

interface Group {
  readonly name: string;
  readonly say: string;
  readonly ids: readonly MeasureId[];
  readonly open: boolean;
}

/** By part of the body, what is not among the first. */
const PARTS: readonly Omit<Group, 'open'>[] = [
  {
    name: 'Round the body',
    say: 'Level with the floor, all the way round.',
    ids: [
      'neck-girth',
      'neck-base-girth',
      'bust-girth',
      'under-bust-girth',
      'waist-girth',
      'high-hip-girth',
      'hip-girth',
      'upper-bust-girth',
      'upper-arm-girth',
      'elbow-girth',
      'wrist-girth',
      'head-girth',
      'hand-girth',
    ],
  },
  {
    name: 'Down the body',
    say: 'Lengths decide how high everything sits. They hardly follow the girths, so they are worth taking.',
    ids: [
      'stature',
      'back-waist-length',
      'front-waist-length',
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
  },
  {
    name: 'Across the body',
    say: 'Widths of shoulder, chest and back.',
    ids: [
      'shoulder-length',
      'shoulder-drop',
      'shoulder-slope',
      'shoulder-width',
      'across-back',
      'across-front',
      'bust-spread',
    ],
  },
  {
    name: 'Front and back apart',
    say: 'From side to side over the front only. With these, fullness goes where the body has it.',
    ids: ['front-bust-arc', 'front-waist-arc', 'front-hip-arc'],
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
  },
];

/**
 * The order of one tape session: what nearly every garment for this wearer needs first, or what one pattern needs, then by part of the
 * body. What was taken is always shown.
 */
export function measureGroups(
  { wearer, readings }: Pick<Body, 'wearer' | 'readings'>,
  pattern?: Pattern,
): readonly Group[] {
  const first = firstMeasures(wearer, pattern);
  const wanted = (id: MeasureId): boolean =>
    !first.includes(id) && (id === 'upper-bust-girth' || askedOf(id, wearer) || readings[id] !== undefined);
  return [
    {
      name: pattern ? `For “${pattern.name}”` : 'To begin with',
      say: `Tie a cord round the waist first and leave it on: lengths begin and end at it. ${
        pattern
          ? 'These choose the size and say where it hangs.'
          : 'Six measures are enough for a first plan.'
      } Tape snug, not tight; over what will be worn underneath.`,
      ids: first,
      open: true,
    },
    ...PARTS.map((part) => ({ ...part, ids: part.ids.filter(wanted), open: false })),
  ];
}

/** Measures that a body has twice, left and right: of these it is asked on which side they were taken. */
export const TWO_SIDED: ReadonlySet<MeasureId> = new Set([
  'shoulder-length',
  'shoulder-drop',
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
