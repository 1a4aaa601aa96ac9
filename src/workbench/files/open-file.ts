import { tellTrouble } from '../words/fault.ts';
import { DESK_WORDS, openBytes, tablePattern, type Opened } from '../../desk/index.ts';
import { sayFinding, tellIn, type Body, type Fitting, type Pattern } from '../../garment/index.ts';
import { leaveFile } from '../station/waiting-file.ts';
import { pageTell } from '../station/page-tell.ts';
import { hrefTo } from '../station/route.ts';
import { docKey } from '../store/kinds.ts';
import { store } from '../store/use-store.ts';

/**
 * Takes in a file of any kind we write or read and keeps what is in it. Gives the address to go to, or null with the reason said.
 * A broken file changes nothing.
 */
export async function openFile(file: File): Promise<string | null> {
  try {
    const bytes = new Uint8Array(await file.arrayBuffer());
    return keep(openBytes(bytes, file.name, { id: crypto.randomUUID() }), file);
  } catch (error) {
    const why = tellTrouble(error, pageTell());
    store.say(`“${file.name}” was not opened, and nothing was changed. ${why}`, 'trouble');
    return null;
  }
}

function keep(opened: Opened, file: File): string {
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
      for (const finding of findings) store.say(sayFinding(DESK_WORDS, finding, tellIn(body.show)));
      return hrefTo('people', body.id);
    }
    case 'person':
      for (const fitting of opened.person.fittings) keepFitting(fitting);
      return keepPerson(opened.person.body);
    case 'pattern':
      return keepPattern(opened.pattern);
    case 'fitting':
      return keepFitting(opened.fitting);
  }
}

/** A document that is here already is not written over in silence: what was there becomes an earlier state that undo brings back. */
function keepPerson(body: Body): string {
  if (store.state().held.has(docKey('person', body.id)))
    store.change('person', body.id, () => body, 'Opened from a file');
  else store.create('person', body, 'Opened from a file');
  return hrefTo('people', body.id);
}

function keepPattern(pattern: Pattern): string {
  if (store.state().held.has(docKey('pattern', pattern.id)))
    store.change('pattern', pattern.id, () => pattern, 'Opened from a file');
  else store.create('pattern', pattern, 'Opened from a file');
  return hrefTo('patterns', pattern.id);
}

function keepFitting(fitting: Fitting): string {
  if (!store.state().held.has(docKey('person', fitting.body.id)))
    store.create('person', fitting.body, 'Came with a fitting');
  if (store.state().held.has(docKey('fitting', fitting.id)))
    store.change('fitting', fitting.id, () => fitting, 'Opened from a file');
  else store.create('fitting', fitting, 'Opened from a file');
  return hrefTo('fit', fitting.id);
}
