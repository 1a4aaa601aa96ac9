import { faultWords, type Fault } from './refusal-table.ts';
import { tellerWords, type Teller } from './evidence-table.ts';
import { levelReason } from './level-words.ts';
import {
  called,
  calledAll,
  findingMaker,
  keyWord,
  len,
  levelWord,
  listOf,
  percent,
  plural,
  t,
} from '../../garment/index.ts';
import type { LevelReason, Phrase } from '../../garment/index.ts';

const CHECK_LENGTH = t`Check a known length.`;
/** What a person has to say where words cannot be read. */
const TO_SAY = t`Say in the workbench what the pieces and sizes are called, how many to cut, and which edges lie on the fold.`;

/** A whole that was kept beside the lines and cannot be used any more: as the file was changed, or as it cannot be read. */
type Lost = Phrase;

/** The sentences of this room. Pieces, sizes, layers and files by their names; pages counted from 1. */
export const EXCHANGE_WORDS = {
  'allowance-assumed': () =>
    t`The drawn lines are taken for stitching lines, with the usual allowances outside of them. If they are cut lines, say how much allowance they include.`,
  'allowance-too-wide': ({ piece, edges }: { piece: string; edges: readonly string[] }) =>
    t`${called(piece)}: the allowance said to be inside the cut line leaves nothing of ${calledAll(edges)}. Check the allowance, and whether that line is a cut line.`,
  'lines-by-file': ({ evidence, allowance }: { evidence: Phrase; allowance: number }) =>
    t`${evidence} ${
      allowance === 0
        ? t`So its lines are taken for stitching lines.`
        : t`So its lines are taken for cutting lines with ${len(allowance)} of allowance inside them.`
    } Say so if that is not right.`,
  'cut-and-stitching-lines': ({ allowance }: { allowance: number }) =>
    t`The pieces are drawn twice, one line mostly ${len(allowance)} inside the other: the outer ones were taken for cutting lines, the inner ones for stitching lines.`,
  'levels-guessed': ({ pieces }: { pieces: readonly string[] }) =>
    t`No bust, waist or hip line was found on ${calledAll(pieces, ';')}, and none could be proposed: nothing says where they run. Draw them on the pattern’s page before blending sizes.`,
  'level-proposed': ({
    level,
    reason,
    pieces,
    below,
  }: {
    level: string;
    reason: LevelReason;
    pieces: readonly string[];
    below: number | null;
  }) =>
    t`The ${levelWord(level)} line is not drawn on ${calledAll(pieces, ';')}. It is proposed ${levelReason(reason, below)}. Look whether that is right.`,
  'kind-assumed': ({ kind, wearer, woven }: { kind: string; wearer: string; woven: boolean }) =>
    t`Nothing in a drawing says what it is for: it is taken for ${keyWord('garment', kind)} for a ${keyWord('wearer', wearer)}, of a ${woven ? t`woven that does not stretch` : t`knit`}. Say so if it is not.`,
  'units-assumed': ({ taken }: { taken: 'mm' | 'px' }) =>
    taken === 'mm'
      ? t`The file does not say its units; millimetres are assumed. ${CHECK_LENGTH}`
      : t`The file gives no real units; ${96} of its units are taken as one inch. ${CHECK_LENGTH}`,
  'units-doubtful': ({ long, piece }: { long: number; piece: boolean }) =>
    t`${piece ? t`A piece` : t`All that is drawn`} would be ${len(long)} long: the units are doubtful. ${CHECK_LENGTH}`,
  'content-ignored': ({ file, what }: { file: string; what: string }) =>
    t`${called(file)} holds ${keyWord('content', what)}; they are ignored.`,
  'file-damaged': ({ file, at }: { file: string; at: Fault }) =>
    t`${called(file)} is damaged; what could be read was. ${faultWords(at)} Compare what was found with the pattern.`,
  'dxf-no-outline': ({ block }: { block: string }) =>
    t`Block "${called(block)}" has no outline on layer ${1} and was left out.`,
  'dxf-loose-lines': () => t`Lines outside of any block were left out.`,
  'dxf-not-read': ({ kind, count }: { kind: string; count: number }) =>
    t`${count} × ${called(kind)} cannot be read and was left out.`,
  'pages-turned': ({ pages }: { pages: readonly number[] }) =>
    t`Turned in the file, but taken the way the other pages lie: ${plural(pages.length, t`page`, t`pages`)} ${listOf(pages.map((p) => t`${p}`))}.`,
  'page-damaged': ({ page, file }: { page: number; file: string }) =>
    t`Page ${page} of ${called(file)} is damaged and could not be read.`,
  'assembly-doubtful': ({ quality }: { quality: number }) =>
    t`Only ${percent(quality)} of the lines that cross page borders go on on the next page. Look at how the pages lie and correct it.`,
  'overlap-unsure': ({ sideways, upDown }: { sideways: boolean; upDown: boolean }) =>
    t`All lines cross the page borders squarely, so how far pages overlap ${sideways && upDown ? t`sideways and up and down` : sideways ? t`sideways` : t`up and down`} cannot be told from them. Check a length that you know across pages.`,
  'lines-far-away': ({ left }: { left: number }) =>
    t`${left === 1 ? t`One line or word stands` : t`${left} lines or words stand`} kilometres away from any pattern; ${left === 1 ? t`it was` : t`they were`} left out. The file may be damaged: compare what was found with the pattern.`,
  'words-drawn': ({ letters, some }: { letters: number; some: boolean }) =>
    t`${some ? t`Some words` : t`Words`} are drawn as shapes or single strokes (${letters} ${plural(letters, t`letter or outline`, t`letters or outlines`)}) and cannot be read. ${TO_SAY}`,
  'shapes-read': ({
    sizes,
    numbers,
    all,
  }: {
    sizes: readonly string[];
    numbers: readonly string[];
    all: boolean;
  }) =>
    t`Read from the shapes of letters: ${sizes.length === 0 ? t`the numbers of the pieces` : numbers.length === 0 ? t`the sizes ${calledAll(sizes)}` : t`the sizes ${calledAll(sizes)} and the numbers of the pieces`}. Compare them with the sheet.${all ? t`` : t` ${TO_SAY}`}`,
  'no-words': () => t`No words were found in the file. ${TO_SAY}`,
  'outline-unclosed': ({ count, closeByHand }: { count: number; closeByHand: Phrase }) =>
    t`${count} long ${plural(count, t`line goes`, t`lines go`)} nearly round a piece without closing and ${plural(count, t`was`, t`were`)} left out: a size or a piece may be missing. ${closeByHand}`,
  'size-missing': ({ piece, sizes }: { piece: string; sizes: readonly string[] }) =>
    t`${called(piece)} has no outline of its own in size ${calledAll(sizes)}; the next size's stands in.`,
  'corner-guessed': ({ piece, sizes }: { piece: string; sizes: readonly string[] }) =>
    t`${called(piece)}: in size ${calledAll(sizes)} a corner of the other sizes does not show; it was placed where its neighbours lie. Check it.`,
  'corner-dropped': ({ piece, count }: { piece: string; count: number }) =>
    t`${called(piece)}: ${count} ${plural(count, t`corner that only some sizes show was`, t`corners that only some sizes show were`)} smoothed over. Check those sizes.`,
  'structure-lost': ({ why }: { why: Lost }) => t`${why} Its pieces are looked for in the lines instead.`,
  'pages-apart': ({ pages }: { pages: readonly number[] }) =>
    t`${plural(pages.length, t`Page`, t`Pages`)} ${listOf(pages.map((p) => t`${p}`))} ${plural(pages.length, t`does`, t`do`)} not join the others; nothing there was taken for a piece.`,
  'sizes-unnamed': ({ count, by }: { count: number; by: Teller }) =>
    t`${count} sizes were found by their ${tellerWords(by)}, but not what they are called. They are numbered from the smallest.`,
  'sizes-by-order': ({ sizes }: { sizes: readonly string[] }) =>
    t`Nothing tells the ${sizes.length} sizes apart but their order, from the smallest: ${calledAll(sizes)}. Check one length in every size.`,
  // What is to be typed is in mm to a tenth, whoever reads it: a tape's fraction would scale wrongly.
  'scale-off': ({ said, wide, high }: { said: number; wide: number; high: number }) =>
    t`The printed square says ${len(said)} but measures ${len(wide)} × ${len(high)} in the file. Bring it in again and say that it is a “${called(`${Math.round(said * 10) / 10} mm square`)}” if the words are right.`,
  'scale-unproven': () =>
    t`No test square with its length in words beside it was found. Check one length that you know before trusting the measures.`,
};

export const exchangeFinding = findingMaker(EXCHANGE_WORDS);
