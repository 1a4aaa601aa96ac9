import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Page } from 'playwright-core';
import { answerAsks } from './hands.ts';
import { openPage, type Opened } from './open-page.ts';
import { INNER, OUTER, photograph } from './skirt-photograph.ts';

describe('a photograph of a piece', () => {
  let opened: Opened;
  let photo: Buffer;
  beforeAll(async () => {
    opened = await openPage({ width: 1400, height: 1000 });
    const other = await opened.context.newPage();
    photo = await photograph(other);
    await other.close();
  });
  afterAll(() => opened.close());

  it('that is none is refused in words of ours, not of the browser', async () => {
    const { page, url } = opened;
    await page.goto(`${url}#/patterns`);
    await page.getByRole('link', { name: 'Trace a photograph' }).click();
    await page
      .locator('.filepick input')
      .setInputFiles({ name: 'letter.png', mimeType: 'image/png', buffer: Buffer.from('no picture') });
    const said = page.getByRole('alert');
    await said.waitFor({ timeout: 30_000 });
    expect(await said.textContent()).toBe(
      'It cannot be opened as a picture. Choose a photograph or scan that is saved as JPEG or PNG.',
    );
  });

  it('is laid flat by its sheet, and says what to expect of it', async () => {
    const { page, url } = opened;
    await page.goto(`${url}#/patterns`);
    await page.getByRole('link', { name: 'Trace a photograph' }).click();
    await page.getByRole('heading', { name: /sheet of paper beside it/ }).waitFor();
    await page
      .locator('.filepick input')
      .setInputFiles({ name: 'quarter skirt.png', mimeType: 'image/png', buffer: photo });
    await page.getByText('The sheet was found.').waitFor({ timeout: 30_000 });
    await page.getByLabel('The sheet is').selectOption({ label: 'A4' });
    await page.getByRole('button', { name: 'Lay it flat' }).click();
    await page.getByText(/Over 400 mm expect/).waitFor({ timeout: 30_000 });
    const words = (await page.locator('.pieces-panel').textContent())!;
    // Two to three pixels to the mm, and the rim of the sheet tells the lens.
    expect(words).toMatch(/A pixel is 0\.[2-6]\d mm/);
    expect(words).toMatch(/lens is reckoned out/);
  });

  async function clickAt(page: Page, at: readonly [number, number]): Promise<void> {
    const p = await page
      .locator('.table-view.trace svg > g')
      .first()
      .evaluate((g: SVGGElement, [u, v]: readonly [number, number]) => {
        const m = g.getScreenCTM()!;
        return { x: m.a * u + m.e, y: m.d * -v + m.f };
      }, at);
    await page.mouse.click(p.x, p.y);
  }
  /** Clicks a millimetre or so beside each corner, as hands do, and closes the outline. */
  async function traceRound(page: Page, ring: readonly (readonly [number, number])[]): Promise<void> {
    for (const [i, [x, y]] of ring.entries()) await clickAt(page, [x + (i % 2 ? 0.8 : -0.8), y + 0.7]);
    await page.getByRole('button', { name: 'Close the outline' }).click();
    await expect.poll(() => page.locator('.runs li').count()).toBe(ring.length);
  }
  const lengths = (page: Page, selector: string): Promise<number[]> =>
    page.locator(selector).evaluateAll((paths) => paths.map((p) => (p as SVGPathElement).getTotalLength()));
  const traced = (page: Page): Promise<number[]> => lengths(page, '.traced:not(.guide):not(.inside)');
  const round = (ring: readonly (readonly [number, number])[]): number =>
    ring.reduce((sum, [x, y], i) => {
      const [u, v] = ring[(i + 1) % ring.length]!;
      return sum + Math.hypot(u - x, v - y);
    }, 0);

  it('gives the next size inwards from the largest, whichever way round it was clicked', async () => {
    const { page } = opened;
    await traceRound(page, OUTER.toReversed());
    await page.getByRole('button', { name: 'Next size inwards' }).click();
    await page.getByText('The next line inside was found along every run.').waitFor({ timeout: 20_000 });
    await expect
      .poll(async () => Math.abs((await traced(page)).reduce((a, b) => a + b, 0) - round(INNER)))
      .toBeLessThan(8);
    // What was begun outwards is not mixed with what goes inwards.
    expect(await page.getByRole('button', { name: 'Next size outwards' }).count()).toBe(0);
    await page.getByRole('button', { name: 'Back to the corners' }).click();
    await page.getByRole('button', { name: 'Lay it flat' }).click();
    await page.getByText(/Over 400 mm expect/).waitFor({ timeout: 30_000 });
  });

  it('is traced corner by corner; the lines snap, and are as long as they are', async () => {
    const { page } = opened;
    await traceRound(page, INNER);
    const truth = INNER.map(([x, y], i) => {
      const [u, v] = INNER[(i + 1) % 4]!;
      return Math.hypot(u - x, v - y);
    });
    for (const [i, long] of (await traced(page)).entries()) {
      // 0.5 % over 400 mm is what docs/formats.md says; corners are where the lines meet, not where a hand clicked.
      expect(Math.abs(long - truth[i]!), `run ${i + 1}: ${long} of ${truth[i]} mm`).toBeLessThan(
        0.005 * truth[i]! + 0.3,
      );
    }
  });

  it('takes lines inside the outline, by the mouse and by the crosshair', async () => {
    const { page } = opened;
    const kind = page.getByRole('combobox', { name: 'A line inside the piece' });
    await kind.selectOption('hip line');
    await clickAt(page, [250, 200]);
    await page.getByText('Click where it ends.').waitFor();
    await clickAt(page, [431, 200]);
    await expect.poll(() => lengths(page, '.traced.inside')).toEqual([expect.closeTo(181, 0)]);
    await kind.selectOption('grainline');
    await page.getByRole('button', { name: /^crosshair; Enter sets an end of the grainline/ }).press('Enter');
    await page.keyboard.press('Shift+ArrowUp');
    await page.keyboard.press('Enter');
    await expect.poll(() => lengths(page, '.traced.inside').then((all) => all.length)).toBe(2);
    await page.getByRole('button', { name: 'Remove the grainline' }).click();
    await expect.poll(() => lengths(page, '.traced.inside').then((all) => all.length)).toBe(1);
  });

  it('gives the next size from the first, and a pattern with both', async () => {
    const { page } = opened;
    await page.getByRole('button', { name: 'Next size outwards' }).click();
    await page.getByText('The next line outside was found along every run.').waitFor({ timeout: 20_000 });
    await expect.poll(async () => (await traced(page)).reduce((a, b) => a + b, 0)).toBeGreaterThan(930);
    // The hip line goes with the outline on which its ends lie.
    expect((await lengths(page, '.traced.inside'))[0]).toBeGreaterThan(190);
    await page.getByLabel('Piece', { exact: true }).fill('Quarter skirt');
    await page.getByRole('button', { name: 'Make it a pattern' }).click();
    await page.locator('#found-head').waitFor({ timeout: 60_000 });
    expect(await page.locator('#found-head').textContent()).toBe('1 piece in 2 sizes');
    await page.getByRole('combobox', { name: 'Garment' }).selectOption('skirt');
    await answerAsks(page);
    await page.getByRole('button', { name: 'Keep this pattern' }).click();
    await page.getByRole('heading', { level: 1, name: 'quarter skirt' }).waitFor({ timeout: 60_000 });
    expect(opened.strangers).toEqual([]);
    expect(opened.complaints).toEqual([]);
  });
});
