import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { beginFitting, walkTo } from './hands.ts';
import { openPage, type Opened } from './open-page.ts';

const INCH = 25.4;
/** `37 5/8 in` as mm. */
function mmOf(words: string): number {
  const [, whole, top, bottom] = /(?:(\d+)\s)?(?:(\d+)\/(\d+)\s)?\s*in/.exec(words.replaceAll(/\s+/g, ' '))!;
  return (Number(whole ?? 0) + (top ? Number(top) / Number(bottom) : 0)) * INCH;
}

describe('the cloth, from what to buy to the cutting table', () => {
  let opened: Opened;
  beforeAll(async () => {
    opened = await openPage({ width: 1400, height: 1000 });
    await beginFitting(opened.page);
    await walkTo(opened.page, 'Cloth');
    await opened.page.locator('.lying').first().waitFor({ timeout: 60_000 });
  });
  afterAll(() => opened.close());

  const length = async (): Promise<number> =>
    mmOf((await opened.page.locator('.lay-length > .amount').textContent())!);

  /** Stops the search; the best it has by then may still come a moment later. */
  async function stop(): Promise<void> {
    await opened.page.getByRole('button', { name: 'Stop' }).click();
    for (let [last, now] = [0, await length()]; last !== now; [last, now] = [now, await length()])
      await opened.page.waitForTimeout(1000);
  }

  it('stops with the best lay so far, proven, and goes on from it', async () => {
    const { page } = opened;
    await stop();
    const before = await length();
    const further = page.getByRole('button', { name: 'Look further' });
    await further.click();
    await stop();
    await further.waitFor();
    // Shown to an eighth of an inch: going on may shorten, never lengthen it.
    expect(await length()).toBeLessThanOrEqual(before);
    expect(before).toBeGreaterThan(300);
  });

  it('says what to buy in yards and metres, more of it for a cloth that shrinks', async () => {
    const { page } = opened;
    const bought = page.getByText(/^Buy /);
    const metres = async (): Promise<number> =>
      Number.parseFloat(/or ([\d.]+) m/.exec((await bought.textContent())!)![1]!);
    const plain = await metres();
    const needed = await length();
    // Up to the next 5 cm, from a length shown to an eighth of an inch.
    expect(plain * 1000).toBeGreaterThanOrEqual(needed - INCH / 16);
    expect(plain * 1000).toBeLessThan(needed + 50 + INCH / 16);
    await page.getByText('Stripes, selvage, gap, shrinkage').click();
    const washed = page.getByLabel('washed: along the selvage', { exact: true });
    await washed.fill('9');
    await washed.press('Enter');
    // Ten inches became nine: length ÷ 0.9.
    await expect.poll(metres).toBeGreaterThan(plain * 1.05);
    expect(await bought.textContent()).toMatch(/before washing/);
    await page.getByRole('button', { name: 'Undo' }).click();
    await expect.poll(metres).toBe(plain);
  });

  it('keeps a pinned piece where it was put, lets it be turned, and lets it go', async () => {
    const { page } = opened;
    // One way, as cloth is laid when nobody has said, no piece may be turned.
    await page
      .locator('label', { hasText: 'Which way the pieces may point' })
      .locator('select')
      .selectOption({ label: 'tops either way (no nap)' });
    // A search would lay it elsewhere between the look and the press.
    await page.getByRole('button', { name: 'Look further' }).waitFor();
    // Pieces are called by their names where they lie, not by numbers alone.
    const called = await page.locator('.lying > text').allTextContents();
    expect(called.filter((text) => /^\d+ \p{L}/u.test(text)).length).toBeGreaterThan(3);
    const piece = page.locator('.lying').filter({ hasText: '2' }).first();
    const name = (await piece.getAttribute('aria-label'))!.split(',')[0]!;
    const at = /([\d/ ]+) in from/.exec((await piece.getAttribute('aria-label'))!)![1];
    await piece.focus();
    await page.keyboard.press('Enter');
    await page.getByText(`${name} is pinned`).waitFor();
    await page.locator('.lying[aria-pressed="true"]').waitFor();
    await expect
      .poll(
        async () =>
          /([\d/ ]+) in from/.exec(
            (await page.locator('.lying[aria-pressed="true"]').getAttribute('aria-label'))!,
          )![1],
      )
      .toBe(at);
    const outline = (): Promise<string | null> =>
      page.locator('.lying[aria-pressed="true"] > path').getAttribute('d');
    const before = await outline();
    await page.getByRole('button', { name: `Turn ${name}` }).click();
    await expect.poll(outline).not.toBe(before);
    await page.getByRole('button', { name: `Let go of ${name}` }).click();
    await expect.poll(() => page.locator('.lying[aria-pressed="true"]').count()).toBe(0);
  });

  it('says at once how wide a cloth would do, and keeps the last lay in view', async () => {
    const { page } = opened;
    const width = page.getByLabel('or another', { exact: true });
    await width.fill('9');
    await width.press('Enter');
    const said = page.getByRole('alert').filter({ hasText: /last lay that worked/ });
    await said.waitFor();
    expect(await said.textContent()).toMatch(/\d+ mm|\d in/);
    await expect.poll(() => page.locator('.lying').count()).toBeGreaterThan(3);
    await page.getByRole('button', { name: 'Undo' }).click();
    await said.waitFor({ state: 'detached' });
  });

  it('reckons every width with its price, and names the notions', async () => {
    const { page } = opened;
    const per = page.locator('label', { hasText: 'for a' }).locator('select');
    // Who reads inches is sold cloth by the yard, until they say otherwise.
    expect(await per.inputValue()).toBe('yard');
    await per.selectOption('metre');
    await page.getByLabel('Price', { exact: true }).fill('10');
    await page.getByRole('button', { name: 'How much at every width?' }).click();
    await page.locator('.needs tbody tr').nth(3).waitFor({ timeout: 120_000 });
    const rows = await page.locator('.needs tbody tr').allTextContents();
    const metres = rows.map((r) => Number.parseFloat(/([\d.]+) m/.exec(r)![1]!));
    // A wider cloth never needs more of it than one a third narrower.
    expect(metres.at(-1)!).toBeLessThan(metres[0]!);
    for (const [i, row] of rows.entries()) expect(row).toContain((metres[i]! * 10).toFixed(2));
  });

  it('gives the picture, the outlines and the projector’s pages, true to scale', async () => {
    const { page } = opened;
    for (const [button, words] of [
      ['with measures', / from cut end</],
      ['outlines only', /<path/],
      ['test page for a projector', /Each square (10 cm|4 in)/],
      ['full size for a projector', /#fff/],
    ] as const) {
      const download = page.waitForEvent('download');
      await page.getByRole('button', { name: button, exact: true }).click();
      const text = Buffer.concat(await (await (await download).createReadStream()).toArray()).toString(
        'utf8',
      );
      expect(text, button).toMatch(words);
      const [, w, , vw] = /<svg[^>]* width="([\d.]+)mm"[^>]*viewBox="(-?[\d.]+) -?[\d.]+ ([\d.]+)/.exec(
        text,
      )!;
      expect(Number(w), button).toBeCloseTo(Number(vw), 3);
    }
    await page.getByText('Where each piece lies').click();
    expect(
      await page
        .getByRole('row', { name: /Centre back/ })
        .first()
        .textContent(),
    ).toMatch(/\d in/);
  });

  it('warns of a laser on synthetic cloth', async () => {
    const { page } = opened;
    await page.getByLabel('Cut with').selectOption({ label: 'a laser' });
    await page.getByLabel('What the cloth is made of').selectOption({ label: 'synthetic, or partly' });
    await page.getByText(/melts/).waitFor();
    expect(opened.complaints).toEqual([]);
  });
});
