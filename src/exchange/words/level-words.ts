import { len, t, type LevelReason, type Phrase } from '../../garment/index.ts';

/** Where a level that nobody drew is proposed, as the end of a sentence: `It is proposed …`. Lengths in mm. */
const REASONS: Readonly<Record<LevelReason, (below: Phrase | null) => Phrase>> = {
  'waist-edge': () => t`along the edge that is the waist`,
  'waist-notch': () => t`at the waist notch`,
  narrowest: () => t`where the piece is narrowest`,
  'hip-notch': (below) => t`at the notch in the side seam${below && t`, ${below} below the waist`}`,
  'chart-depth': (below) =>
    t`where the size table says${below && t`, ${below} below the waist along the side`}`,
  'usual-depth': (below) =>
    t`at the usual depth${below && t`, ${below}`} below the waist along the side (common practice)`,
  underarm: () => t`at the foot of the armhole`,
  'cap-foot': (below) => t`${below ?? t`just`} below the foot of the cap (common practice)`,
  'wrist-edge': () => t`along the lower edge of the sleeve`,
  'crotch-point': () => t`at the crotch point`,
  'below-crotch': (below) => t`${below ?? t`just`} below the crotch point (common practice)`,
  'half-leg': () => t`half way down the inside leg (common practice)`,
  'along-seam': () => t`at the same place of the seam as on the piece it is sewn to`,
  'as-parent': () => t`where it runs on the piece that it repeats`,
};

/** `below`: how far below what the reason speaks of, mm, where that is known. */
export const levelReason = (reason: LevelReason, below: number | null): Phrase =>
  REASONS[reason](below === null ? null : t`${len(below)}`);
