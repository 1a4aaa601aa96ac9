import { docKey } from '../store/kinds.ts';
import { store } from '../store/use-store.ts';
import { draftSample } from '../worker/bench.ts';

/** The sample patterns as they are offered before any of them is drafted. A test holds this list to the samples' own. */
export const SAMPLE_CARDS = [
  { id: 'stage-bodice', name: 'Stage bodice', say: 'Lined, panelled, to the high hip, with stand collar and set-in sleeves. Ten sizes.' },
] as const;

/** Drafts a sample in the worker and keeps it; gives its id in the cupboard. */
export async function keepSample(id: string): Promise<string> {
  const pattern = await draftSample(id);
  if (!store.state().held.has(docKey('pattern', pattern.id))) store.create('pattern', pattern, 'Drafted for the theatre');
  return pattern.id;
}

/** Lays out the theatre's whole wardrobe: cast, patterns and a worked fitting; gives the fitting to open. */
export async function layOutWardrobe(): Promise<string> {
  throw new Error('samples not there yet');
}
