import { t } from '../../garment/index.ts';

/** What a reader is doing, while it is. */
export const PROGRESS_WORDS = {
  pages: t`reading pages`,
  assembly: t`putting pages together`,
  outlines: t`finding outlines`,
  pieces: t`finding pieces`,
  seams: t`finding seams`,
} as const;
export type Doing = keyof typeof PROGRESS_WORDS;
