import { tellTrouble } from '../words/fault.ts';
import { DESK_WORDS, openBytes, tablePattern, type Opened } from '../../desk/index.ts';
import { sayFinding, tellIn, type Fitting, type Pattern, type Person } from '../../garment/index.ts';
import { leaveFile } from '../station/waiting-file.ts';
import { pageTell } from '../station/page-tell.ts';
import { hrefTo } from '../station/route.ts';
import { docKey } from '../store/kinds.ts';
import { sayHere } from '../station/say-here.ts';
import { store } from '../store/use-store.ts';

/**
 * Takes in a file of any kind we write or read and keeps what is in it. Gives the address to go to, or null with the reason said.
 * A broken file changes nothing.
 */
export async function openFile(file: File): Promise<string | null> {
  try {
    const bytes = new Uint8Array(await file.arrayBuffer());
    return await keep(openBytes(bytes, file.name, { id: crypto.randomUUID() }), file);
  } catch (error) {
    const why = tellTrouble(error, pageTell());
    sayHere(`“${file.name}” was not opened, and nothing was changed. ${why}`, 'trouble');
    return null;
  }
}

async function keep(opened: Opened, file: File): Promise<string> {
  switch (opened.kind) {
    case 'drawing':
      leaveFile(file);
      return hrefTo('patterns', 'from-a-file');
    case 'chart': {
      const pattern = tablePattern(crypto.randomUUID(), opened.name, opened.chart);
      store.create('pattern', pattern, `Read the table ${file.name}`);
      return hrefTo('patterns', pattern.id);
    }
    case 'measures': {
      const { body, findings } = opened;
      store.create('person', body, `Read the measures from ${file.name}`);
      const href = hrefTo('people', body.id);
      for (const finding of findings)
        sayHere(sayFinding(DESK_WORDS, finding, tellIn(body.show)), 'note', href);
      return href;
    }
    case 'person':
      return keepPerson(opened.person);
    case 'pattern':
      return keepPattern(opened.pattern);
    case 'fitting':
      return keepFitting(opened.fitting);
  }
}

const FROM_A_FILE = 'Opened from a file';

/** A person with all that is known of how their sheet and fittings came to be. What was not here before goes again if a part cannot be kept. */
async function keepPerson({ body, fittings, past }: Person): Promise<string> {
  const keys = [docKey('person', body.id), ...fittings.map((fitting) => docKey('fitting', fitting.id))];
  const fresh = keys.filter((key) => !store.state().held.has(key));
  try {
    for (const fitting of fittings)
      await store.bring('fitting', fitting, FROM_A_FILE, past?.fittings[fitting.id]);
    await store.bring('person', body, FROM_A_FILE, past?.body);
  } catch (error) {
    await store.erase(fresh);
    throw error;
  }
  return hrefTo('people', body.id);
}

async function keepPattern(pattern: Pattern): Promise<string> {
  await store.bring('pattern', pattern, FROM_A_FILE);
  return hrefTo('patterns', pattern.id);
}

async function keepFitting(fitting: Fitting): Promise<string> {
  if (!store.state().held.has(docKey('person', fitting.body.id)))
    store.create('person', fitting.body, 'Came with a fitting');
  await store.bring('fitting', fitting, FROM_A_FILE);
  return hrefTo('fit', fitting.id);
}
