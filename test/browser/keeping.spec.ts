import { afterEach, describe, expect, it } from 'vitest';
import { addPerson, beginFitting, onDisk, takeMeasure, walkTo } from './hands.ts';
import { openPage, type How, type Opened } from './open-page.ts';

let opened: Opened | null = null;
async function open(how: How = {}): Promise<Opened> {
  opened = await openPage(how);
  return opened;
}
afterEach(async () => {
  await opened?.close();
  opened = null;
});

const bust = 'bust';

describe('nothing already entered is lost', () => {
  it('keeps a measure through a tab that is killed right after the key', async () => {
    const { page, context, url } = await open();
    await addPerson(page, 'Odile Fenn');
    const typed = { waist: '33', hip: '43', [bust]: '40 1/2' };
    for (const [measure, value] of Object.entries(typed)) await takeMeasure(page, measure, value);
    const address = page.url();
    await page.close({ runBeforeUnload: false });
    const again = await context.newPage();
    await again.goto(address);
    for (const [measure, value] of Object.entries(typed))
      expect(await again.getByLabel(measure, { exact: true }).inputValue()).toBe(value);
    expect(address.startsWith(url)).toBe(true);
  });

  it('undoes and redoes to any depth, also after the page was closed', async () => {
    const { page } = await open();
    await addPerson(page, 'Odile Fenn');
    for (const typed of ['38', '39', '40', '41']) {
      await takeMeasure(page, 'waist', typed);
      await takeMeasure(page, 'hip', `${Number(typed) + 6}`);
    }
    // A tab that is closed before the disk has it all keeps all values, but the last acts then come back as one.
    await onDisk(page);
    await page.reload();
    const values = async (): Promise<string> =>
      `${await page.getByLabel('waist', { exact: true }).inputValue()}/${await page.getByLabel('hip', { exact: true }).inputValue()}`;
    await expect.poll(values).toBe('41/47');
    const states = ['/', '38/', '38/44', '39/44', '39/45', '40/45', '40/46', '41/46', '41/47'];
    const undo = page.getByRole('button', { name: 'Undo' });
    for (const state of states.slice(0, -1).toReversed()) {
      await undo.click();
      await expect.poll(values).toBe(state);
    }
    expect(await undo.isEnabled()).toBe(false);
    const redo = page.getByRole('button', { name: 'Redo' });
    for (const state of states.slice(1)) {
      await redo.click();
      await expect.poll(values).toBe(state);
    }
    expect(await redo.isEnabled()).toBe(false);
    // As fast as a hand can: each press counts.
    await undo.dblclick();
    await expect.poll(values).toBe('40/46');
    await page.locator('#work').focus();
    for (let i = 0; i < 3; i++) await page.keyboard.press('Control+z');
    await expect.poll(values).toBe('39/44');
  });

  it('lets two tabs work on one person at once, and says so', async () => {
    const { page, context } = await open();
    await beginFitting(page);
    const other = await context.newPage();
    await other.goto(page.url());
    await other.getByText('This is open in another tab too').waitFor();
    await page.getByText('This is open in another tab too').waitFor();
    const ease = (p: typeof page, level: string) =>
      p.getByRole('slider', { name: `${level}: ease`, exact: true });
    const before = await Promise.all(
      ['bust', 'waist'].map(async (l) => Number(await ease(page, l).getAttribute('aria-valuenow'))),
    );
    // Both hands at the same moment, on different levels: neither may swallow the other.
    await Promise.all([
      (async () => {
        await ease(page, 'bust').focus();
        for (let i = 0; i < 4; i++) await page.keyboard.press('ArrowRight');
      })(),
      (async () => {
        await ease(other, 'waist').focus();
        for (let i = 0; i < 4; i++) await other.keyboard.press('ArrowRight');
      })(),
    ]);
    const now = (p: typeof page, name: 'aria-valuenow' | 'aria-valuetext') =>
      Promise.all(['bust', 'waist'].map((level) => ease(p, level).getAttribute(name)));
    // Four quarter inches on top of what the plan had, rounded to a quarter: neither tab's hand was swallowed.
    const offs = async (p: typeof page): Promise<number> =>
      Math.max(...(await now(p, 'aria-valuenow')).map((mm, i) => Math.abs(Number(mm) - before[i]! - 25.4)));
    await expect.poll(() => offs(page)).toBeLessThan(6.35 / 2 + 1);
    await onDisk(page);
    await onDisk(other);
    const here = await now(page, 'aria-valuetext');
    await expect.poll(() => now(other, 'aria-valuetext')).toEqual(here);
    const fresh = await context.newPage();
    await fresh.goto(page.url());
    await ease(fresh, 'bust').waitFor();
    expect(await now(fresh, 'aria-valuetext')).toEqual(here);
    expect(await offs(fresh)).toBeLessThan(6.35 / 2 + 1);
    await walkTo(page, 'Record');
    await page.getByText('bust: ease').first().waitFor();
    await page.getByText('waist: ease').first().waitFor();
  });

  it('does not take back in one tab what is done there while it reads what the other did', async () => {
    /** The list of what is kept comes late, as from a busy disk: not before `goOn`, once `readLate` is said. */
    interface Late {
      readLate?: boolean;
      reading?: boolean;
      goOn?: () => void;
    }
    const { page, context } = await open({
      before: () => {
        const late = globalThis as Late;
        const read = IDBObjectStore.prototype.getAll;
        IDBObjectStore.prototype.getAll = function (...args) {
          const request = read.apply(this, args);
          if (!late.readLate || this.name !== 'heads') return request;
          late.reading = true;
          const on = request.addEventListener.bind(request);
          request.addEventListener = (kind: string, hear: EventListener) =>
            on(kind, (event) => {
              late.goOn = () => hear(event);
            });
          return request;
        };
      },
    });
    await addPerson(page, 'Odile Fenn');
    await takeMeasure(page, 'waist', '30');
    await onDisk(page);
    const other = await context.newPage();
    await other.goto(page.url());
    const bustOf = (p: typeof page) => p.getByLabel(bust, { exact: true });
    const waist = (p: typeof page) => p.getByLabel('waist', { exact: true });
    await bustOf(other).waitFor();
    await page.evaluate(() => ((globalThis as Late).readLate = true));
    await takeMeasure(other, bust, '40');
    await page.waitForFunction(() => (globalThis as Late).reading);
    await takeMeasure(page, 'waist', '33');
    await onDisk(page);
    await page.evaluate(() => {
      const late = globalThis as Late;
      late.readLate = false;
      late.goOn!();
    });
    await expect.poll(() => bustOf(page).inputValue()).toBe('40');
    await expect.poll(() => waist(other).inputValue()).toBe('33');
    expect(await waist(page).inputValue()).toBe('33');
  });

  it('keeps what is entered when the storage is full, says so, and writes it once there is room', async () => {
    const { page } = await open({
      before: () => {
        const put = IDBObjectStore.prototype.put;
        IDBObjectStore.prototype.put = function (...args: [unknown, IDBValidKey?]) {
          if ((globalThis as { full?: boolean }).full)
            throw new DOMException('no room', 'QuotaExceededError');
          return put.apply(this, args);
        };
      },
    });
    await addPerson(page, 'Odile Fenn');
    await takeMeasure(page, 'waist', '30');
    await page.evaluate(() => ((globalThis as { full?: boolean }).full = true));
    await takeMeasure(page, 'waist', '33');
    await page.getByText('storage is full').waitFor();
    await takeMeasure(page, 'hip', '43');
    expect(await page.getByLabel('waist', { exact: true }).inputValue()).toBe('33');
    await page.evaluate(() => ((globalThis as { full?: boolean }).full = false));
    await takeMeasure(page, bust, '40');
    await page.getByText('Everything is saved again').waitFor();
    await page.reload();
    expect(await page.getByLabel('waist', { exact: true }).inputValue()).toBe('33');
    expect(await page.getByLabel('hip', { exact: true }).inputValue()).toBe('43');
    expect(await page.getByLabel(bust, { exact: true }).inputValue()).toBe('40');
  });

  it('works without any storage, and says so', async () => {
    const { page } = await open({
      before: () =>
        Object.defineProperty(globalThis, 'indexedDB', {
          value: {
            open: () => {
              throw new DOMException('no', 'SecurityError');
            },
          },
        }),
    });
    await page.getByText('gives the page no storage').waitFor();
    await addPerson(page, 'Odile Fenn');
    await takeMeasure(page, bust, '40 1/2');
    expect(await page.getByLabel(bust, { exact: true }).inputValue()).toBe('40 1/2');
  });

  it('leaves a kept document that it cannot read as it is, and offers it as a file', async () => {
    const { page } = await open();
    await addPerson(page, 'Odile Fenn');
    await takeMeasure(page, 'waist', '33');
    // The last write first, so that it is the broken document that stands there.
    await onDisk(page);
    await page.evaluate(
      () =>
        new Promise<void>((done) => {
          const asked = indexedDB.open('pintrue');
          asked.onsuccess = () => {
            const tx = asked.result.transaction('states', 'readwrite');
            const all = tx.objectStore('states').openCursor();
            all.onsuccess = () => {
              const cursor = all.result;
              if (!cursor) return;
              cursor.update({ ...cursor.value, doc: { ...cursor.value.doc, wearer: 'giant' } });
              cursor.continue();
            };
            tx.oncomplete = () => done();
          };
        }),
    );
    await page.goto(page.url().replace(/#.*/, '#/'));
    await page.reload();
    await page.getByText('could not be read').first().waitFor();
    const download = page.waitForEvent('download');
    await page.getByRole('button', { name: /Save it as a file/ }).click();
    const text = await (await (await download).createReadStream()).toArray();
    expect(Buffer.concat(text).toString()).toContain('giant');
  });

  it('takes a broken file without a mark on what is kept, and says what is wrong with it', async () => {
    const { page } = await open();
    await addPerson(page, 'Odile Fenn');
    await page.goto(page.url().replace(/#.*/, '#/'));
    await page.setInputFiles('input[type=file]', {
      name: 'old.json',
      mimeType: 'application/json',
      buffer: Buffer.from('{"format":"pintrue-fitting","version":1,'),
    });
    await page.getByText('“old.json” was not opened, and nothing was changed.').waitFor();
    await page.setInputFiles('input[type=file]', {
      name: 'm.csv',
      mimeType: 'text/csv',
      buffer: Buffer.from('measure,value,unit\nbust-girth,forty,in\n'),
    });
    await page.getByText(/m\.csv, row 2/).waitFor();
    await walkTo(page, 'People');
    // Waited for, not counted at once: the list comes a moment after its screen.
    await page.getByRole('link', { name: 'Odile Fenn' }).waitFor();
  });
});

describe('a person’s data is theirs', () => {
  it('goes into one file, is erased without a trace, and comes back from the file', async () => {
    const { page, url } = await open();
    await beginFitting(page);
    await walkTo(page, 'Trial notes');
    await page.getByRole('button', { name: 'hem, front', exact: true }).focus();
    await page.keyboard.press('Enter');
    const form = page.getByRole('form', { name: 'What is seen: hem' });
    const picture = { name: 'hem.png', mimeType: 'image/png', buffer: await page.screenshot() };
    await form.locator('input[type=file]').setInputFiles(picture);
    await page.getByRole('img', { name: /^Photograph 1/ }).waitFor();
    await page.getByRole('button', { name: 'Note it' }).click();
    await walkTo(page, 'Record');
    await page.getByLabel('Name of the version').fill('first muslin');
    await page.getByRole('button', { name: 'Keep as it stands' }).click();
    await page.getByRole('button', { name: /^Go back to it.*first muslin/ }).waitFor();
    const done = (): Promise<string[]> => page.locator('.acts li').allTextContents();
    await expect.poll(async () => (await done()).length).toBeGreaterThan(1);
    const before = await done();
    await walkTo(page, 'People');
    await page.getByRole('link', { name: 'Odile Fenn' }).click();
    const download = page.waitForEvent('download');
    await page.getByRole('button', { name: 'Save everything about Odile Fenn to a file' }).click();
    const bytes = Buffer.concat(await (await (await download).createReadStream()).toArray());
    expect(bytes.toString()).toContain('Odile Fenn');
    await page.getByRole('button', { name: 'Erase Odile Fenn …' }).click();
    const focused = (): Promise<string> => page.evaluate(() => document.activeElement?.textContent ?? '');
    expect(await focused()).toBe('Cancel');
    await page.getByRole('button', { name: 'Erase', exact: true }).click();
    await page.getByText('Everything about Odile Fenn is erased.').waitFor();
    await page.getByRole('button', { name: 'Got it' }).waitFor();
    expect(await page.evaluate(() => document.activeElement?.id)).toBe('work');
    const left = await page.evaluate(
      () =>
        new Promise<string>((done) => {
          const asked = indexedDB.open('pintrue');
          asked.onsuccess = () => {
            const names = [...asked.result.objectStoreNames].filter((n) => n !== 'patterns');
            const tx = asked.result.transaction(names);
            const all = names.map((n) => tx.objectStore(n).getAll());
            tx.oncomplete = () => done(JSON.stringify(all.map((r) => r.result)));
          };
        }),
    );
    expect(left).not.toContain('Odile');
    await page.goto(`${url}#/`);
    await page.setInputFiles('input[type=file]', {
      name: 'odile.json',
      mimeType: 'application/json',
      buffer: bytes,
    });
    await page.getByRole('heading', { level: 1, name: 'Odile Fenn' }).waitFor();
    expect(await page.getByText('is erased').count()).toBe(0);
    expect(await page.getByLabel(bust, { exact: true }).inputValue()).toBe('40 1/2');
    await page.goto(`${url}#/`);
    await page.getByRole('link', { name: 'Stage bodice for Odile Fenn' }).click();
    await walkTo(page, 'Trial notes');
    const photo = page.getByRole('img', { name: /^Photograph 1/ });
    await expect.poll(() => photo.evaluate((img: HTMLImageElement) => img.naturalWidth)).toBeGreaterThan(100);
    await walkTo(page, 'Record');
    await page.getByRole('button', { name: /^Go back to it.*first muslin/ }).waitFor();
    await expect.poll(done).toEqual(before);
  });
});
