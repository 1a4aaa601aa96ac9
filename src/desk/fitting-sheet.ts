import {
  cautionLine,
  cautionsFor,
  TELL_BOTH,
  tellOf,
  type Fitting,
  type PaperChoices,
  type Pattern,
  type Plan,
  type Tell,
} from '../garment/index.ts';
import type { SheetChoices } from '../paper/index.ts';
import { sizeWord, sizeWords } from '../pipeline/index.ts';

type OnPaper = Pick<SheetChoices, 'notes' | 'tell' | 'allowances' | 'nest' | 'pieces'>;

const onPaper = (
  made: Parameters<typeof cautionsFor>[0] & { readonly pattern: Pattern },
  paper: PaperChoices,
  tell: Tell,
): OnPaper => ({
  notes: cautionsFor(made).map(cautionLine),
  tell,
  allowances: paper.allowances,
  ...(paper.nest === 'faint' ? { nest: made.pattern } : {}),
  ...(paper.pieces ? { pieces: paper.pieces } : {}),
});

/** What goes on paper with one printed size of a pattern: no person's, so in both units. @param date ISO, printed as given */
export const patternSheet = (
  pattern: Pattern,
  size: number,
  paper: PaperChoices,
  date: string,
): SheetChoices => ({
  title: pattern.name,
  size: sizeWord(pattern.chart.sizes[size]!.id),
  date,
  ...onPaper({ pattern }, paper, TELL_BOTH),
});

/** What goes on paper with the pieces of a fitting, on every face: as its paper choices say, with its cautions on the first page. */
export function fittingSheet(fitting: Fitting, plan: Plan): SheetChoices {
  const { paper, body } = fitting;
  return {
    title: fitting.title,
    person: body.name,
    size: sizeWords(plan),
    date: fitting.on,
    ...onPaper(fitting, paper, tellOf(body)),
  };
}
