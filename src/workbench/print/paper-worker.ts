import type { Fitting, Finding, Garment, Plan } from '../../garment/index.ts';
import { pageSvg, pdf, printPages, readPaper, sheet, svg, type SheetChoices } from '../../paper/index.ts';
import { answerCalls } from '../call/index.ts';
import { fittingSheet, paperOf } from '../../desk/index.ts';

/** What is to be printed: the made garment and how the person wants it on paper. */
export interface PrintAsk {
  readonly fitting: Fitting;
  readonly garment: Garment;
  readonly plan: Plan;
}

export interface PagePicture {
  readonly label: string;
  readonly width: number;
  readonly height: number;
  readonly svg: string;
}

const choicesOf = ({ fitting, plan }: PrintAsk): SheetChoices => fittingSheet(fitting, plan);

/** The same pages are drawn for the preview and written to the PDF: there is no second way. */
const pagesOf = (ask: PrintAsk) => printPages(ask.garment, choicesOf(ask), readPaper(paperOf(ask.fitting)));

const doings = {
  preview: (
    ask: PrintAsk,
    tell: (share: number) => void,
  ): { pages: PagePicture[]; findings: readonly Finding[] } => {
    const { pages, findings } = pagesOf(ask);
    const choices = choicesOf(ask);
    const pictures = pages.map((page, i) => {
      tell(i / pages.length);
      return {
        label: page.label,
        width: page.width,
        height: page.height,
        svg: pageSvg(page, choices),
      };
    });
    return { pages: pictures, findings };
  },
  pdf: async (ask: PrintAsk): Promise<{ bytes: Uint8Array; findings: readonly Finding[] }> =>
    pdf(pagesOf(ask).pages, choicesOf(ask)),
  svg: (ask: PrintAsk): string => {
    const choices = choicesOf(ask);
    return svg(sheet(ask.garment, choices, readPaper(paperOf(ask.fitting)).width), choices);
  },
};
export type PaperDoings = typeof doings;

answerCalls(doings);
