import {
  InputError,
  parseChartCsv,
  parseMeasuresCsv,
  readBody,
  readFitting,
  readPattern,
  type Body,
  type Fitting,
  type Pattern,
} from '../../garment/index.ts';
import { leaveFile } from '../station/waiting-file.ts';
import { tablePattern } from '../patterns/table-pattern.ts';
import { hrefTo } from '../station/route.ts';
import { docKey } from '../store/kinds.ts';
import { store } from '../store/use-store.ts';

/**
 * Takes in a file of any kind we write or read and keeps what is in it. Gives the address to go to, or null with the reason said.
 * A broken file changes nothing.
 */
export async function openFile(file: File): Promise<string | null> {
  try {
    const ending = file.name.toLowerCase().split('.').pop() ?? '';
    if (['pdf', 'svg', 'dxf'].includes(ending)) {
      leaveFile(file);
      return hrefTo('patterns', 'from-a-file');
    }
    const text = await file.text();
    return ending === 'csv' || ending === 'txt' ? openTable(file.name, text) : openDocument(text);
  } catch (error) {
    const why = error instanceof InputError ? error.inFile(file.name).message : (error as Error).message;
    store.say(`“${file.name}” was not opened, and nothing was changed. ${why}`, 'trouble');
    return null;
  }
}

function openTable(name: string, text: string): string {
  const title = name.replace(/\.[^.]+$/, '');
  if (/^\s*"?measure"?\s*[,;\t]\s*"?kind/i.test(text)) {
    const pattern = tablePattern(crypto.randomUUID(), title, parseChartCsv(text));
    store.create('pattern', pattern, `Read the table ${name}`);
    return hrefTo('patterns', pattern.id);
  }
  const table = parseMeasuresCsv(text);
  const body: Body = {
    id: crypto.randomUUID(),
    name: title,
    wearer: 'woman',
    show: 'in',
    waist: 'unsaid',
    readings: table.readings,
  };
  store.create('person', body, `Read the measures from ${name}`);
  return hrefTo('people', body.id);
}

function openDocument(text: string): string {
  const value: unknown = JSON.parse(text);
  const format = typeof value === 'object' && value !== null && 'format' in value ? value.format : null;
  if (format === 'pintrue-fitting') return keepFitting(readFitting(value));
  if (format === 'pintrue-pattern') return keepPattern(readPattern(value));
  if (format === 'pintrue-body') return keepPerson(readBody(value));
  if (format === 'pintrue-person') {
    const { body, fittings } = value as { body: object; fittings: unknown[] };
    const person = readBody({ format: 'pintrue-body', version: 1, ...body });
    const read = (Array.isArray(fittings) ? fittings : []).map((f) => readFitting(f));
    for (const fitting of read) keepFitting(fitting);
    return keepPerson(person);
  }
  throw new InputError({
    code: 'unknown-document',
    where: {},
    message: 'This is not a fitting, a pattern or a person saved by Pintrue.',
  });
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
