import { called, garmentAtSize, t, TELL_CM } from '../src/garment/index.ts';
import type { Garment, Pattern } from '../src/garment/index.ts';
import { pdf, printPages, readPaper } from '../src/paper/index.ts';
import type { Page, SheetChoices } from '../src/paper/index.ts';
import { sample } from '../src/samples/index.ts';
import type { Case } from './case.ts';

interface Job {
  readonly garment: Garment;
  readonly choices: SheetChoices & { readonly nest: Pattern };
}

function bodice(): Job {
  const pattern = sample('stage-bodice')!;
  return {
    garment: garmentAtSize(pattern, 4),
    choices: {
      title: pattern.name,
      size: t`${called('Bust 96')}`,
      tell: TELL_CM,
      date: '2026-11-25',
      allowances: true,
      nest: pattern,
    },
  };
}

const cases: readonly Case[] = [
  {
    name: 'panelled bodice with all other sizes: pages for A4',
    setup: bodice,
    run: ({ garment, choices }: Job) => printPages(garment, choices, readPaper('a4')).pages.length,
  },
  {
    name: 'panelled bodice: pages for the 36 in roll',
    setup: bodice,
    run: ({ garment, choices }: Job) => printPages(garment, choices, readPaper('roll-36')).pages.length,
  },
  {
    name: 'its A4 pages as PDF',
    setup: () => {
      const { garment, choices } = bodice();
      return { pages: printPages(garment, choices, readPaper('a4')).pages, choices };
    },
    run: async ({ pages, choices }: { pages: Page[]; choices: Job['choices'] }) =>
      (await pdf(pages, choices)).bytes.length,
  },
];
export default cases;
