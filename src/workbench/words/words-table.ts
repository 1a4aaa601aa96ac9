import { called, figure, t } from '../../garment/index.ts';

/** Why something asked of the page cannot be had: whole sentences. */
export const WORKBENCH_WORDS = {
  'program-fault': ({ says }: { says: string }) =>
    t`That is our fault, not yours. Do it once more; if it comes again, tell us these words of the program: ${called(says)}.`,
  'worker-stopped': () => t`The worker stopped. Do it once more.`,
  'pattern-away': () => t`The pattern has not reached the worker. Do it once more.`,
  'file-unread': () => t`Nothing has been read yet. Choose the file once more.`,
  'lay-missing': () => t`There is no lay yet to make a file of. Wait for the first one.`,
  'photo-missing': () => t`No picture is open. Choose one first.`,
  'photo-not-flat': () => t`The photo has not been laid flat yet. Lay it flat first.`,
  'photo-unreadable': () =>
    t`It cannot be opened as a picture. Choose a photograph or scan that is saved as JPEG or PNG.`,
  'photo-heavy': ({ pixels, most }: { pixels: number; most: number }) =>
    t`The picture has ${figure(pixels / 1e6, 0)} million pixels; up to ${figure(most / 1e6, 0)} million can be traced. Scan it at fewer dots per inch.`,
  'state-missing': () => t`Its last state is missing from this browser’s storage.`,
  'kept-pattern-missing': () => t`Its pattern is missing from this browser’s storage.`,
  'document-gone': () => t`It is not kept here any more.`,
};
