import type { Pattern } from '../../garment/index.ts';

/** A decision about the pattern that is shown, with its words; acts with the same `merge` in a row are one. */
export type ChangePattern = (act: (p: Pattern) => Pattern, say: string, merge?: string) => void;
