/**
 * By what a level line that nobody drew is proposed. By the piece itself: its waist, armhole, cap, crotch, wrist; by a notch; by common practice:
 * the hip at the usual depth, the thigh just below the crotch, the knee half way down the leg; or as on the piece it is sewn to or repeats.
 */
export const LEVEL_REASONS = [
  'waist-edge',
  'waist-notch',
  'narrowest',
  'hip-notch',
  'chart-depth',
  'usual-depth',
  'underarm',
  'cap-foot',
  'wrist-edge',
  'crotch-point',
  'below-crotch',
  'half-leg',
  'along-seam',
  'as-parent',
] as const;
export type LevelReason = (typeof LEVEL_REASONS)[number];
