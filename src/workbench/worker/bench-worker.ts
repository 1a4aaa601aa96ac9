import { pageError } from '../words/fault.ts';
import { alterationOf, CATALOGUE, EVERYDAY, type DrawingRow, type Proposal } from '../../alter/index.ts';
import {
  createPipeline,
  newFitting,
  trialProposals,
  type Made as Whole,
  type NewFitting,
  type StepResult,
} from '../../pipeline/index.ts';
import type { Fitting, Garment, Pattern } from '../../garment/index.ts';
import { answerCalls, newsOf, reuse, type News } from '../call/index.ts';
import { gripsOf, TRY, type Grip } from './grips.ts';
import { dropOldest } from './patterns-there.ts';
import { amountIn, slopeBetween, type Slope } from './slopes.ts';

/** A fitting without its pattern, and the pattern once, under its mark: the pattern is large and seldom changes. */
export interface MakeAsk {
  readonly rest: Omit<Fitting, 'pattern'>;
  readonly mark: string;
  readonly pattern?: Pattern;
  /** The step whose before and after are looked at; without it, before all steps. */
  readonly step?: string;
}

/** A step as the page shows it: what it was and did, without the garments around it. */
export type MadeStep = Omit<StepResult, 'before' | 'after'>;

/** Everything the page shows of a made fitting. */
export interface Made extends Pick<Whole, 'plan' | 'garment' | 'girths' | 'seams' | 'findings'> {
  /** The garment before the step looked at, or before all of them. */
  readonly before: Garment;
  readonly steps: readonly MadeStep[];
}

/** The pipeline of this page: its results are kept as long as the page is open. */
const pipeline = createPipeline();
/** The patterns that came last, by their marks: as many as the page knows to be here. */
const patterns = new Map<string, Pattern>();
let last: Omit<Fitting, 'pattern'> | null = null;

/** The fitting asked for, with every part that did not change as the object it was before: the pipeline's memos go by identity. */
function fittingOf(ask: MakeAsk): Fitting {
  if (ask.pattern) {
    patterns.set(ask.mark, ask.pattern);
    dropOldest(patterns);
  }
  const pattern = patterns.get(ask.mark);
  if (!pattern) throw pageError('pattern-away');
  last = reuse(last, ask.rest);
  return { ...last, pattern };
}

function madeOf(ask: MakeAsk): Made {
  const { plan, planned, garment, girths, seams, findings, steps } = pipeline.make(fittingOf(ask));
  const looked = steps.find((s) => s.step.id === ask.step);
  return {
    plan,
    garment,
    girths,
    seams,
    findings,
    before: looked?.before ?? planned,
    steps: steps.map(({ before: _before, after: _after, ...rest }) => rest),
  };
}

/** Each amount of a step tried a little larger or smaller, through the whole stack after it. */
function slopesOf(fitting: Fitting, id: string): readonly Slope[] {
  const step = fitting.steps.find((s) => s.id === id);
  if (step?.kind !== 'alter' || step.off) return [];
  const { garment } = pipeline.make(fitting);
  return (alterationOf(step.entry)?.params ?? []).flatMap((param): Slope[] => {
    const amount = amountIn(fitting, id, param.id);
    if (amount === undefined || (param.kind !== 'length' && param.kind !== 'angle')) return [];
    const by = amount + TRY <= param.max ? TRY : -TRY;
    const tried: Fitting = {
      ...fitting,
      steps: fitting.steps.map((s) =>
        s === step ? { ...step, params: { ...step.params, [param.id]: amount + by } } : s,
      ),
    };
    return [{ param: param.id, pieces: slopeBetween(garment, pipeline.make(tried).garment, by) }];
  });
}

/** The catalogue without its geometry: names, amounts and limits, for the page's list, with what people call each. */
const catalogue = CATALOGUE.map(({ make: _make, sentence: _sentence, ...rest }) => ({
  ...rest,
  alsoCalled: EVERYDAY[rest.id]!,
}));
export type CatalogueEntry = (typeof catalogue)[number];

let told: Made | null = null;
/** The made fitting as what is new in it against the one told before. */
function tellMade(ask: MakeAsk): News {
  const made = madeOf(ask);
  const news = newsOf(told, made);
  told = made;
  return news;
}

const doings = {
  make: tellMade,
  begin: (given: NewFitting): Fitting => newFitting(given),
  catalogue: () => catalogue,
  /** The small drawing of a catalogue entry. */
  drawing: async (id: string): Promise<DrawingRow> => (await import('./entry-drawing.ts')).entryDrawing(id),
  grips: ({
    ask,
    step,
  }: {
    ask: MakeAsk;
    step: string;
  }): { grips: readonly Grip[]; slopes: readonly Slope[] } => {
    const fitting = fittingOf(ask);
    return { grips: gripsOf(pipeline.make(fitting), step), slopes: slopesOf(fitting, step) };
  },
  observe: (ask: MakeAsk): readonly Proposal[] => trialProposals(fittingOf(ask), pipeline),
  wardrobe: async () => {
    const { CAST, demoFittings } = await import('../../samples/index.ts');
    return { cast: CAST, fittings: demoFittings() };
  },
  sample: async (id: string) => (await import('../../samples/index.ts')).sample(id),
};
export type BenchDoings = typeof doings;

answerCalls(doings);
