import { join } from 'node:path';
import { build } from 'vite';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { SHELF_CASES } from '../../src/workbench/store/shelf.test-case.ts';
import { openPage, type Opened } from './open-page.ts';
import type * as ShelfPage from './shelf-page.ts';

declare const shelfPage: typeof ShelfPage;

/** The shelf and its cases as one script, as the page would be built. */
async function script(): Promise<string> {
  const made = await build({
    configFile: false,
    logLevel: 'error',
    build: {
      write: false,
      minify: false,
      target: 'es2023',
      lib: { entry: join(import.meta.dirname, 'shelf-page.ts'), formats: ['iife'], name: 'shelfPage' },
    },
  });
  const [first] = Array.isArray(made) ? made : [made];
  if (!first || !('output' in first)) throw new Error('nothing was built');
  return `${first.output[0].code}\nglobalThis.shelfPage = shelfPage;`;
}

let opened: Opened;
beforeAll(async () => {
  opened = await openPage();
  await opened.page.evaluate(await script());
});
afterAll(() => opened?.close());

/** The same cases that src/workbench/store/memory-shelf.test.ts runs. */
describe('the browser’s own storage', () => {
  it.each(SHELF_CASES.map(({ name }, i) => ({ name, i })))('$name', async ({ i }) => {
    const fault = await opened.page.evaluate(async (n) => {
      const open = () => shelfPage.openIndexedDbShelf(`case-${n}`);
      try {
        await shelfPage.SHELF_CASES[n]!.run(await open(), await open());
        return null;
      } catch (error) {
        return (error as Error).message;
      }
    }, i);
    expect(fault).toBeNull();
  });

  it('opens what an earlier page wrote, from the layout as it always was', async () => {
    const read = await opened.page.evaluate(async () => {
      const key = 'fitting/old';
      const head = { key, kind: 'fitting', id: 'old', at: 1, last: 1, turn: 3, changed: '2026-01-02' };
      // Said here once more and by hand: what stands in browsers since the first page must not move with the code.
      await new Promise<void>((done, failed) => {
        const asked = indexedDB.open('earlier', 1);
        asked.addEventListener('upgradeneeded', () => {
          const db = asked.result;
          db.createObjectStore('heads', { keyPath: 'key' }).put(head);
          const states = db.createObjectStore('states');
          states.put({ doc: { n: 0 }, pattern: 'm', say: 'Began', on: '2026-01-01' }, [key, 0]);
          states.put({ doc: { n: 1 }, pattern: 'm', say: 'Went on', on: '2026-01-02', merge: 'w' }, [key, 1]);
          db.createObjectStore('patterns').put({ id: 'p' }, 'm');
          const versions = db.createObjectStore('versions', { keyPath: 'id' });
          versions.createIndex('key', 'key');
          versions.put({ id: 'v', key, name: 'V', on: '2026-01-02', doc: { n: 0 }, pattern: 'm' });
          const photos = db.createObjectStore('photos', { keyPath: 'id' });
          photos.createIndex('key', 'key');
          photos.put({ id: 'f', key, bytes: new Blob(['jpeg']) });
        });
        asked.addEventListener('success', () => {
          asked.result.close();
          done();
        });
        asked.addEventListener('error', () => failed(asked.error));
      });
      const shelf = await shelfPage.openIndexedDbShelf('earlier');
      return {
        heads: (await shelf.heads()).map((h) => `${h.key} ${h.at} ${h.turn}`),
        entry: await shelf.entry(key, 1),
        says: (await shelf.sentences(key)).map((s) => s.say),
        pattern: await shelf.pattern('m'),
        versions: (await shelf.versions(key)).map((v) => v.name),
        photo: await (await shelf.photo('f'))!.bytes.text(),
      };
    });
    expect(read).toEqual({
      heads: ['fitting/old 1 3'],
      entry: { doc: { n: 1 }, pattern: 'm', say: 'Went on', on: '2026-01-02', merge: 'w' },
      says: ['Began', 'Went on'],
      pattern: { id: 'p' },
      versions: ['V'],
      photo: 'jpeg',
    });
  });
});
