import { docKey, type DocKey } from '../store/kinds.ts';
import { store } from '../store/use-store.ts';
import { bench, draftSample } from '../worker/bench.ts';

const kept = (key: DocKey): boolean => store.state().held.has(key);

/** Drafts a sample in the worker and keeps it; gives its id in the cupboard. */
export async function keepSample(id: string): Promise<string> {
  const pattern = await draftSample(id);
  if (!kept(docKey('pattern', pattern.id))) store.create('pattern', pattern, 'Drafted from the samples');
  return pattern.id;
}

/** Lays out the whole worked example: people, patterns and a fitting for each; gives the worked one to open. What is kept already is left as it is. */
export async function layOutWardrobe(): Promise<string> {
  const { cast, fittings } = await bench.call('wardrobe');
  for (const body of cast)
    if (!kept(docKey('person', body.id))) store.create('person', body, 'Joined the cast');
  for (const { pattern } of fittings) {
    if (!kept(docKey('pattern', pattern.id))) store.create('pattern', pattern, 'Drafted from the samples');
  }
  for (const fitting of fittings) {
    if (!kept(docKey('fitting', fitting.id))) store.create('fitting', fitting, `Began: ${fitting.title}`);
  }
  return fittings[0]!.id;
}
