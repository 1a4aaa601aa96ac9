import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { drawingSvg, patternSheet, writeDxf, writePatternPdf } from '../../src/exchange/index.ts';
import { tiledPdf } from '../../src/exchange/tiled.test-case.ts';
import { sample } from '../../src/samples/index.ts';
import { answerAsks } from './hands.ts';
import { openPage, type Opened } from './open-page.ts';

const MADE = '2026-01-01';
const skirt = sample('a-line-skirt');
const sizes = skirt.chart.sizes.length;

describe('bringing in a drawn pattern', () => {
  let opened: Opened;
  beforeAll(async () => {
    opened = await openPage({ width: 1400, height: 1000 });
  });
  afterAll(() => opened.close());

  async function bring(name: string, bytes: Uint8Array | string): Promise<void> {
    const { page } = opened;
    await page.goto(`${opened.url}#/patterns`);
    await page.getByRole('heading', { level: 1, name: 'Patterns' }).waitFor();
    await page.locator('.filepick input').setInputFiles({
      name,
      mimeType: 'application/octet-stream',
      buffer: Buffer.from(bytes),
    });
    await page.getByRole('heading', { level: 1, name: `From “${name}”` }).waitFor();
  }
  const foundPieces = (): Promise<void> => opened.page.locator('#found-head').waitFor({ timeout: 120_000 });

  it('takes a table as it stands on an envelope, says what it cannot read and where, and lets it be corrected in place', async () => {
    const { page } = opened;
    await page.goto(`${opened.url}#/patterns`);
    await page.getByRole('button', { name: 'Type or paste a size table' }).click();
    const table = page.getByRole('textbox', { name: 'Table' });
    await table.fill('Size\t10\t12\nBust\t34\tthirty\nHip\t36 1/2\t39');
    const said = page.getByRole('dialog').getByRole('status');
    await expect.poll(() => said.textContent()).toMatch(/row 2, column 3/i);
    // What is understood is kept, and what is not is named.
    await expect.poll(() => said.textContent()).toContain('2 sizes and 1 row read.');
    await table.fill('Size 10 12\nBust in. 34 36 1/2\nHips 36 1/2 39');
    await expect.poll(() => said.textContent()).toBe('2 sizes and 2 rows read.');
    const warned: string[] = [];
    page.on('console', (message) => void warned.push(message.text()));
    await page.getByLabel('Name of the pattern').fill('From an envelope');
    await page.getByLabel('Name of the pattern').press('Enter');
    await page.getByRole('heading', { level: 1, name: 'From an envelope' }).waitFor();
    const cell = page.getByLabel('bust, size 12', { exact: true });
    expect(await cell.inputValue()).toBe('36 1/2');
    await cell.fill('36');
    await cell.press('Enter');
    await page.getByText('bust, size 12').first().waitFor();
    expect(warned.filter((words) => /not connected/i.test(words))).toEqual([]);
  });

  it('takes a pasted row into the size table, and a pasted table over the rows that are there', async () => {
    const { page } = opened;
    const cell = page.getByLabel('bust, size 10', { exact: true });
    await cell.focus();
    await page.evaluate(() => {
      const data = new DataTransfer();
      data.setData('text/plain', '33 1/2\t35\n');
      document.activeElement!.dispatchEvent(
        new ClipboardEvent('paste', { clipboardData: data, bubbles: true, cancelable: true }),
      );
    });
    await expect.poll(() => page.getByLabel('bust, size 12', { exact: true }).inputValue()).toBe('35');
    expect(await cell.inputValue()).toBe('33 1/2');
    await page.getByRole('button', { name: 'Paste a table' }).click();
    await page.getByRole('textbox', { name: 'Table' }).fill('Size;10;12\nWaist;26 1/2;29');
    await page.getByRole('button', { name: 'Take it over' }).click();
    await expect.poll(() => page.getByLabel('waist, size 12', { exact: true }).inputValue()).toBe('29');
    expect(await cell.inputValue()).toBe('33 1/2');
  });

  it('shows what an SVG holds, each guess with its reason, and keeps what is not refused', async () => {
    const { page } = opened;
    // Without what our own files say of themselves: lines and words only, as any drawing program leaves them.
    const plain = drawingSvg(patternSheet(skirt, { semantics: false }).drawing);
    await bring('skirt.svg', plain);
    await foundPieces();
    expect(await page.locator('#found-head').textContent()).toContain(`in ${sizes} sizes`);
    const seams = page.getByRole('region', { name: 'Seams it took for likely' }).locator('> ul > li');
    const many = await seams.count();
    expect(many).toBeGreaterThan(0);
    for (const seam of await seams.all())
      expect(await seam.locator('small').textContent()).toMatch(/^(very likely|likely|perhaps): \S/);
    await seams.first().getByRole('checkbox').uncheck();
    await page.getByLabel('Name of the pattern').fill('Brought skirt');
    await page.getByRole('combobox', { name: 'Garment' }).selectOption('skirt');
    await answerAsks(page);
    await page.getByRole('button', { name: 'Keep this pattern' }).click();
    await page.getByRole('heading', { level: 1, name: 'Brought skirt' }).waitFor({ timeout: 60_000 });
    // The refused one is not there; those of lower rank were never taken.
    await page.getByRole('heading', { name: `${many - 1} seams` }).waitFor();
  });

  it('reads our PDF and our DXF with all their sizes', async () => {
    const { page } = opened;
    for (const [name, bytes] of [
      ['skirt.pdf', await writePatternPdf(skirt, MADE)],
      ['skirt.dxf', writeDxf(skirt, MADE)],
    ] as const) {
      await bring(name, bytes);
      await foundPieces();
      const head = await page.locator('#found-head').textContent();
      expect(head, name).toContain(`in ${sizes} sizes`);
      expect(Number.parseInt(head!, 10), name).toBeGreaterThanOrEqual(2);
    }
  });

  it('puts tiled pages together, shows how, and takes a correction and its undoing', async () => {
    const { page } = opened;
    const { bytes, pages } = await tiledPdf(skirt, 0, 1400);
    await bring('tiled.pdf', bytes);
    const tiles = page.getByRole('region', { name: 'Do the pages lie rightly together?' });
    await tiles.waitFor({ timeout: 120_000 });
    await expect.poll(() => tiles.locator('p').first().textContent()).toContain(`of ${pages} pages`);
    const picture = tiles.getByRole('img');
    expect(
      await picture.evaluate((img: HTMLImageElement) => img.decode().then(() => img.naturalWidth)),
    ).toBeGreaterThan(10);
    const across = tiles.getByLabel('Pages across');
    const found = await across.inputValue();
    const grid = tiles.getByRole('combobox');
    const [first, second] = [await grid.nth(0).inputValue(), await grid.nth(1).inputValue()];
    await grid.nth(0).selectOption({ value: second });
    await tiles.getByRole('button', { name: 'As it was found' }).waitFor({ timeout: 120_000 });
    await expect.poll(() => grid.nth(1).inputValue(), { timeout: 60_000 }).toBe(first);
    await tiles.getByRole('button', { name: 'As it was found' }).click();
    await expect.poll(() => grid.nth(0).inputValue(), { timeout: 60_000 }).toBe(first);
    expect(await across.inputValue()).toBe(found);
  });

  it('shows how far it is and stops when told to; says of a broken file what is wrong', async () => {
    const { page } = opened;
    const { bytes } = await tiledPdf(sample('stage-bodice'), 0, 1400);
    await bring('long.pdf', bytes);
    await page.getByRole('button', { name: 'Stop' }).click();
    await page.getByRole('alert').filter({ hasText: 'Stopped. Nothing was kept.' }).waitFor();
    await bring('broken.pdf', '%PDF-1.7\nnothing of a PDF follows');
    await page
      .getByRole('alert')
      .filter({ hasText: /broken\.pdf/ })
      .waitFor({ timeout: 30_000 });
    await bring('picture.svg', '<svg xmlns="http://www.w3.org/2000/svg"><p</svg>');
    await page
      .getByRole('alert')
      .filter({ hasText: /picture\.svg/ })
      .waitFor({ timeout: 30_000 });
    expect(opened.strangers).toEqual([]);
    expect(opened.complaints).toEqual([]);
  });
});
