import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { beginFitting, walkTo } from './hands.ts';
import { openPage, type Opened } from './open-page.ts';

/** A trial as a person notes it: where it is seen, an amount or words, what is proposed, and the way on and back. */
describe('trial notes', () => {
  let opened: Opened;
  beforeAll(async () => {
    opened = await openPage({ width: 1400, height: 1000 });
    await beginFitting(opened.page);
    await walkTo(opened.page, 'Trial notes');
  });
  afterAll(() => opened.close());

  const photographs = (): Promise<number> =>
    opened.page.evaluate(
      () =>
        new Promise<number>((done, fail) => {
          void indexedDB.databases().then(([found]) => {
            const asked = indexedDB.open(found!.name!);
            asked.addEventListener('error', () => fail(asked.error!));
            asked.addEventListener('success', () => {
              const count = asked.result.transaction('photos').objectStore('photos').count();
              count.addEventListener('success', () => {
                asked.result.close();
                done(count.result);
              });
            });
          });
        }),
    );
  const list = () => opened.page.locator('.proposals > li');

  it('one shoulder lower is reached by pointing, and each line says its name', async () => {
    const { page } = opened;
    const line = page.getByRole('button', { name: 'shoulder seam, front', exact: true });
    await line.hover();
    await page.locator('.sight:hover .sight-name', { hasText: 'shoulder seam' }).waitFor();
    await line.focus();
    await page.keyboard.press('Enter');
    await page.getByRole('button', { name: 'has folds from the neck to the underarm' }).click();
    await page.getByRole('button', { name: 'left only' }).click();
    await page.getByLabel('how far the tip is off').fill('3/8');
    await page.getByRole('button', { name: 'Note it' }).click();
    await expect
      .poll(() => list().first().textContent())
      .toMatch(/Left side: shoulder tip and underarm lowered by 3\/8 in/);
    expect(await page.evaluate(() => document.activeElement?.id)).toBe('seen-head');
  });

  it('what is seen at the back of the waist takes nothing from the front', async () => {
    const { page } = opened;
    await page.getByRole('button', { name: 'waist line, back', exact: true }).focus();
    await page.keyboard.press('Enter');
    await page.getByRole('button', { name: 'back only' }).click();
    await page.getByLabel('at the centre', { exact: true }).fill('1');
    await page.getByRole('button', { name: 'Note it' }).click();
    await expect
      .poll(() => list().first().textContent())
      .toMatch(
        /Back: shorten 1 in above the waist, tapering to nothing at the side seam\. Front: nothing changes/,
      );
  });

  it('words alone are kept and asked about; a line is chosen by its name', async () => {
    const { page } = opened;
    await page.getByLabel('Or choose a line').selectOption('elbow');
    await page.getByLabel('In your own words').fill('pulls when she reaches for the lamp');
    await page.getByRole('button', { name: 'Note it' }).click();
    await expect.poll(() => list().last().textContent()).toMatch(/not answered yet.*How much is it/);
  });

  it('a note is changed, and its answer with it; the record has it all', async () => {
    const { page } = opened;
    await page.getByRole('button', { name: /^Change: elbow/ }).click();
    expect(await page.getByLabel('In your own words').inputValue()).toMatch(/the lamp/);
    await page.getByLabel('length at the point of the elbow').fill('1/2');
    await page.getByRole('button', { name: 'Note it' }).click();
    await expect.poll(() => list().last().textContent()).toMatch(/1\/2 in more length at the elbow/);
    await walkTo(page, 'Record');
    await page.getByText('elbow pulls when the arm is bent: 1/2 in').waitFor();
    await walkTo(page, 'Trial notes');
  });

  it('after Accept the way leads on to that very step, and back', async () => {
    const { page } = opened;
    for (const name of [/^Accept.*Back: shorten/, /^Accept.*Left side/]) {
      await page.getByRole('button', { name }).click();
      await page.getByRole('link', { name: /^Settle what is open: \d+/ }).waitFor();
    }
    const openStep = page.locator('.step-name[aria-expanded="true"]');
    for (const words of [/shorten 1 in above/, /Left side: shoulder tip/]) {
      const proposal = list().filter({ hasText: words });
      await proposal.getByRole('link', { name: 'see it on the pieces' }).click();
      await expect.poll(() => openStep.first().textContent(), { timeout: 20_000 }).toMatch(words);
      await walkTo(page, 'Trial notes');
    }
    await page.getByRole('button', { name: /^Take it back.*Left side/ }).click();
    await page.getByRole('button', { name: /^Accept.*Left side/ }).waitFor();
  });

  it('a photograph that is struck out is gone from the storage too', async () => {
    const { page } = opened;
    const picture = { name: 'back.png', mimeType: 'image/png', buffer: await page.screenshot() };
    const attach = async (): Promise<void> => {
      await page.getByRole('button', { name: 'hem, front', exact: true }).focus();
      await page.keyboard.press('Enter');
      const file = page.getByRole('form', { name: 'What is seen: hem' }).locator('input[type=file]');
      await file.setInputFiles([picture, { ...picture, name: 'again.png' }]);
      await expect.poll(() => page.getByRole('img', { name: /^Photograph/ }).count()).toBe(2);
    };
    await attach();
    await expect.poll(photographs).toBe(2);
    await page.getByRole('button', { name: 'Cancel' }).click();
    await expect.poll(photographs).toBe(0);
    await attach();
    await page.getByRole('button', { name: 'Note it' }).click();
    await page.getByRole('button', { name: 'Delete photograph 1' }).click();
    await expect.poll(photographs).toBe(1);
    await page.getByRole('button', { name: /^Strike out: hem/ }).click();
    await expect.poll(photographs).toBe(0);
  });

  it('complains of nothing', () => {
    expect(opened.complaints).toEqual([]);
  });
});
