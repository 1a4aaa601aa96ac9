import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { beginFitting, settled, walkTo } from './hands.ts';
import { openPage, type Opened } from './open-page.ts';

describe('on a telephone held upright', () => {
  let opened: Opened;
  beforeAll(async () => {
    opened = await openPage({ width: 390, height: 844, touch: true, calm: true });
  });
  afterAll(() => opened.close());

  /** Nothing but what scrolls by itself may be wider than the screen. */
  const fits = async (): Promise<void> => {
    const { page } = opened;
    await settled(page);
    expect(await page.evaluate(() => document.scrollingElement!.scrollWidth)).toBeLessThanOrEqual(390);
  };

  it('goes from measures to a plan without a sideways scroll', async () => {
    const { page } = opened;
    await fits();
    await beginFitting(page);
    await fits();
    const fitting = page.url();
    for (const station of ['Pieces', 'Trial notes', 'To settle', 'Record', 'Cloth', 'Paper']) {
      await walkTo(page, station);
      await fits();
    }
    for (const station of ['People', 'Patterns']) {
      await walkTo(page, station);
      await fits();
    }
    await page.goto(fitting);
  });

  it('brings the pieces nearer with two fingers and chooses one with a tap', async () => {
    const { page, context } = opened;
    await walkTo(page, 'Pieces');
    await page.locator('.piece').first().waitFor({ timeout: 60_000 });
    await settled(page);
    const view = (await page.locator('.table-view').boundingBox())!;
    const k = async (): Promise<number> =>
      Number(
        await page.locator('.table-view > svg').evaluate((e: SVGElement) => e.style.getPropertyValue('--k')),
      );
    const before = await k();
    const cdp = await context.newCDPSession(page);
    const middle = { x: view.x + view.width / 2, y: view.y + 160 };
    const fingers = (apart: number) => [
      { x: middle.x - apart, y: middle.y, id: 0 },
      { x: middle.x + apart, y: middle.y, id: 1 },
    ];
    await cdp.send('Input.dispatchTouchEvent', { type: 'touchStart', touchPoints: fingers(30) });
    for (const apart of [40, 55, 70, 90])
      await cdp.send('Input.dispatchTouchEvent', { type: 'touchMove', touchPoints: fingers(apart) });
    await cdp.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] });
    // From 60 px apart to 180: three times nearer.
    await expect.poll(k).toBeGreaterThan(before * 2);
    await page.getByRole('button', { name: 'All', exact: true }).tap();
    await expect.poll(k).toBeCloseTo(before, 4);
    await page.evaluate(() => scrollTo(0, 0));
    const piece = (await page.locator('[data-piece="front-centre"] .own').boundingBox())!;
    await page.touchscreen.tap(piece.x + piece.width * 0.3, piece.y + piece.height * 0.6);
    await page.getByRole('heading', { name: '1 Centre front' }).waitFor();
  });

  it('keeps the drawing of where the tape goes in view beside the field in use', async () => {
    const { page } = opened;
    await page.goto(`${opened.url}#/people`);
    await page.getByRole('link', { name: 'Odile Fenn' }).tap();
    const guide = page.getByRole('region', { name: 'Where the tape goes' });
    for (const field of ['waist', 'hip']) {
      await page.getByLabel(field, { exact: true }).tap();
      await expect
        .poll(async () => {
          const [drawing, typed] = [
            (await guide.boundingBox())!,
            (await page.getByLabel(field, { exact: true }).boundingBox())!,
          ];
          return {
            'drawing begins on the screen': drawing.y >= -1,
            'drawing leaves room': drawing.height < 844 * 0.3,
            'field lies under the drawing': typed.y > drawing.y + drawing.height - 1,
            'field ends on the screen': typed.y + typed.height < 844,
          };
        })
        .toEqual({
          'drawing begins on the screen': true,
          'drawing leaves room': true,
          'field lies under the drawing': true,
          'field ends on the screen': true,
        });
    }
    await page.goBack();
    await page.goBack();
  });

  it('prints from the phone', async () => {
    const { page } = opened;
    await walkTo(page, 'Paper');
    const save = page.getByRole('button', { name: 'Save the PDF' });
    await expect.poll(() => save.isEnabled(), { timeout: 60_000 }).toBe(true);
    const download = page.waitForEvent('download');
    await save.tap();
    const bytes = Buffer.concat(await (await (await download).createReadStream()).toArray());
    expect(bytes.subarray(0, 5).toString()).toBe('%PDF-');
    expect(opened.complaints).toEqual([]);
  });
});
