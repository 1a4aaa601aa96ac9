import { called, capital, figure, t, type Phrase } from '../../garment/index.ts';

interface Of {
  readonly file: string;
}

/** What a reader counts, and gives up at. */
const COUNTED = {
  strokes: t`lines`,
  points: t`points`,
  operations: t`drawing steps`,
  pages: t`pages`,
} as const;
export type Counted = keyof typeof COUNTED;

/** Where a file stops making sense: a line and the place in it, from 1; `end` where it breaks off. */
export type Fault = { readonly line: number; readonly column: number } | 'end';
export const faultWords = (at: Fault): Phrase =>
  at === 'end'
    ? t`It breaks off before its end.`
    : t`It can be followed up to line ${at.line}, place ${at.column}, but not from there on.`;

const AGAIN = t`Get it anew from where it came from, or save it again with the program it was made with.`;
const TRACE = t`Bring it in as a photograph or scan instead and trace it.`;
const OTHER_DXF = t`Save the pattern again as DXF with the program it was made with.`;

/** Why a file, a photograph or what was said of it cannot be used: whole sentences. Files by their names. */
export const REFUSAL_WORDS = {
  'file-empty': ({ file }: Of) => t`${called(file)} is empty. ${AGAIN}`,
  'file-heavy': ({ file, megabytes, most }: Of & { megabytes: number; most: number }) =>
    t`${called(file)} has ${figure(megabytes, 0)} MB; more than ${figure(most, 0)} MB is not read. Bring in its parts one by one.`,
  'file-counts': ({ file, most, counted }: Of & { most: number; counted: Counted }) =>
    t`${called(file)} has more than ${most} ${COUNTED[counted]}; that is more than any pattern needs.`,
  'file-nested': ({ file, most }: Of & { most: number }) =>
    t`${called(file)} nests more than ${most} deep; no pattern is drawn so. ${AGAIN}`,
  'file-slow': ({ file }: Of) => t`${called(file)} takes too long to read; it was given up. ${AGAIN}`,
  'file-memory': ({ file, megabytes }: Of & { megabytes: number }) =>
    t`${called(file)} needs more than ${megabytes} MB of memory to read.`,
  'file-broken': ({ file }: Of) => t`${called(file)} is damaged: reading it broke off. ${AGAIN}`,
  'reading-stopped': ({ file }: Of) => t`Reading ${called(file)} was cancelled.`,
  'joining-stopped': ({ file }: Of) => t`Putting ${called(file)} together was cancelled.`,

  'is-picture': ({ file }: Of) =>
    t`${called(file)} is a picture. Bring it in as a photograph or scan and trace it.`,
  'is-packed': ({ file }: Of) =>
    t`${called(file)} is packed or of an office program. Unpack it, or print it to a PDF, and bring that in.`,
  'is-packed-svg': ({ file }: Of) =>
    t`${called(file)} is a compressed SVG. Save it as plain SVG and bring that in.`,
  'is-no-drawing': ({ file }: Of) =>
    t`${called(file)} is no PDF, SVG or DXF. Save the pattern as one of these and bring that in.`,
  'no-drawn-lines': ({ file }: Of) =>
    t`${called(file)} has no drawn lines. Bring in the file that the pieces are drawn in.`,
  'no-closed-outline': ({ file, closeByHand }: Of & { closeByHand: Phrase | null }) =>
    t`No closed outline was found in ${called(file)}; there is nothing to take for a piece.${closeByHand === null ? null : t` ${closeByHand}`}`,

  'pdf-start': ({ file }: Of) => t`${called(file)} is not a PDF: it does not begin like one. ${AGAIN}`,
  'pdf-locked': ({ file }: Of) =>
    t`${called(file)} is locked with a password. Save an unlocked copy with the password you were given, and bring that in.`,
  'pdf-damaged': ({ file, cut }: Of & { cut: boolean }) =>
    t`${called(file)} is damaged. ${cut ? faultWords('end') : t`Where its pages stand in it cannot be made out.`} ${AGAIN}`,
  'pdf-no-page': ({ file }: Of) => t`${called(file)} is damaged: no page of it could be read. ${AGAIN}`,
  'pdf-pictures': ({ file }: Of) => t`${called(file)} holds only pictures (a scan), no drawn lines. ${TRACE}`,

  'svg-bare': ({ file }: Of) => t`${called(file)} is not an SVG: it holds no elements. ${AGAIN}`,
  'svg-other': ({ file, element }: Of & { element: string }) =>
    t`${called(file)} is not an SVG: its first element is “${called(element)}”.`,
  'svg-damaged': ({ file, at }: Of & { at: Fault }) =>
    t`${called(file)} is damaged. ${faultWords(at)} ${AGAIN}`,

  // What is wrong with a DXF: said by itself or after the line it stands in (`dxf-line`).
  'dxf-line': ({ line, what }: { line: number; what: Phrase }) =>
    line > 0 ? t`In line ${line}: ${what}` : t`${capital(what)}`,
  'dxf-heavy': ({ megabytes, most }: { megabytes: number; most: number }) =>
    t`the file has ${figure(megabytes, 0)} MB; up to ${figure(most, 0)} MB are read. Save its parts one by one.`,
  'dxf-binary': () => t`this is a binary DXF; save it again as text (ASCII) DXF.`,
  'dxf-empty': () => t`the file is empty. ${OTHER_DXF}`,
  'dxf-no-code': ({ says }: { says: string }) =>
    t`a group code should stand here, a whole number, but ${found(says)}. ${OTHER_DXF}`,
  'dxf-no-number': ({ says }: { says: string }) =>
    t`a number should stand here, but ${found(says)}. ${OTHER_DXF}`,
  'dxf-entries': () => t`the file has too many entries to read; that is more than any pattern needs.`,
  'dxf-points': ({ blocks }: { blocks: boolean }) =>
    blocks
      ? t`its blocks hold too many points to read; that is more than any pattern needs.`
      : t`the file has too many points to read; that is more than any pattern needs.`,
  'dxf-lines': ({ most }: { most: number }) =>
    t`the file has more than ${most} lines; that is more than any pattern needs.`,
  'dxf-far': () => t`a coordinate is too large to be a pattern. ${OTHER_DXF}`,
  'dxf-no-section': () => t`no section was found: is this a DXF file? ${OTHER_DXF}`,
  'dxf-no-line': () => t`no line was found in the file. Bring in the one that the pieces are drawn in.`,
  'dxf-no-piece': () => t`no piece was found in the file. Bring in the one that the pieces are drawn in.`,

  'no-such-line': ({ file, said }: Of & { said: string }) =>
    t`No line with its length of “${called(said)}” written beside it was found in ${called(file)}.`,
  'no-such-length': ({ said }: { said: string }) =>
    t`“${called(said)}” is no known length. Say for instance “${called('100 mm square')}”, “${called('4 in square')}” or “${called('10 cm line')}”.`,
  'no-square': ({ file }: Of) =>
    t`No square was found in ${called(file)} to scale by. Draw one beside words that say its length, or give a bare factor, such as ${figure(25.4)} where the drawing is in inches.`,
  'pages-misplaced': () =>
    t`Every page needs one place of its own: whole numbers from 0, and only pages with lines on them.`,

  'places-in-line': () =>
    t`The known places lie too nearly on one line; give at least four, no three of them in line.`,
  'places-few': ({ count }: { count: number }) => t`Four known places are needed; there are ${count}.`,
  'picture-large': () =>
    t`That area at that fineness is too large a picture; take a smaller area or a coarser pixel.`,
  'scan-dots': ({ least, most }: { least: number; most: number }) =>
    t`A scan has between ${least} and ${most} dots per inch.`,
  'no-sheet': () => t`No light sheet stands out from its ground; drag the four corners by hand.`,
  'sheet-crooked': () => t`The sheet has no four straight sides in the photo; drag the four corners by hand.`,
};

/** What stands there instead. */
const found = (says: string): Phrase => (says === '' ? t`nothing does` : t`it says "${called(says)}"`);
