import { pageError } from '../words/fault.ts';
import type { DrawingRow, Proposal } from '../../alter/index.ts';
import {
  createPipeline,
  newFitting,
  type Made as Whole,
  type NewFitting,
  type StepResult,
} from '../../pipeline/index.ts';
import type { Fitting, Garment, Pattern } from '../../garment/index.ts';
import { answerCalls, newsOf, reuse, type News } from '../call/index.ts';
import { dropOldest } from './patterns-there.ts';
import type { CatalogueEntry } from './entry-list.ts';
import type { Handles } from './handles.ts';

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
  /** Nothing to do: it is asked so that the worker's script is here before it is needed. */
  ready: () => null,
  catalogue: async (): Promise<readonly CatalogueEntry[]> => (await import('./entry-list.ts')).ENTRY_LIST,
  /** The small drawing of a catalogue entry. */
  drawing: async (id: string): Promise<DrawingRow> => (await import('./entry-drawing.ts')).entryDrawing(id),
  grips: async ({ ask, step }: { ask: MakeAsk; step: string }): Promise<Handles> =>
    (await import('./handles.ts')).handlesOf(fittingOf(ask), step, pipeline),
  observe: async (ask: MakeAsk): Promise<readonly Proposal[]> =>
    (await import('./trial-answers.ts')).trialAnswers(fittingOf(ask), pipeline),
  wardrobe: async () => {
    const { CAST, demoFittings } = await import('../../samples/index.ts');
    return { cast: CAST, fittings: demoFittings() };
  },
  sample: async (id: string) => (await import('../../samples/index.ts')).sample(id),
};
export type BenchDoings = typeof doings;

answerCalls(doings);
