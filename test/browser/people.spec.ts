import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { addPerson, chooseSmock, settled, takeMeasure, walkTo } from './hands.ts';
import { openPage, type Opened } from './open-page.ts';

describe('whoever is measured', () => {
  let opened: Opened;
  beforeAll(async () => {
    opened = await openPage({ width: 1280, height: 720 });
  });
  afterAll(() => opened.close());
  const row = (measure: string) => opened.page.locator(`.measure[data-measure="${measure}"]`);
  const words = (): Promise<string> => opened.page.locator('main').innerText();

  it('a child is asked for its height first, and has a chest wherever something is named', async () => {
    const { page } = opened;
    await addPerson(page, 'Nell Fenn');
    await page.getByLabel('Body').selectOption('child');
    await expect.poll(() => page.locator('.measure').first().innerText()).toContain('height');
    expect(await page.getByLabel('chest', { exact: true }).isVisible()).toBe(true);
    for (const group of await page.locator('details.measures').all())
      await group.evaluate((d: HTMLDetailsElement) => (d.open = true));
    expect(await words()).not.toMatch(/bust/i);
    for (const [measure, typed] of [
      ['height', '50'],
      ['chest', '25 1/2'],
      ['waist', '23'],
      ['hip', '27'],
    ] as const)
      await takeMeasure(page, measure, typed);
    const smock = await chooseSmock(page, 'Nell Fenn');
    await page.getByText('Not measured yet of Nell Fenn, and wanted here: back waist length.').waitFor();
    await page.getByRole('link', { name: 'Measure for this pattern' }).click();
    await page.getByRole('heading', { name: 'For “Chorus smock”' }).waitFor();
    await takeMeasure(page, 'back waist length', '11');
    await page.getByRole('link', { name: 'Next: “Chorus smock” for Nell Fenn' }).click();
    await smock.waitFor();
    await smock.click();
    await page.getByRole('heading', { name: 'The plan, level by level' }).waitFor();
    for (const station of ['Fit', 'To settle', 'Record', 'Paper']) {
      await walkTo(page, station);
      await settled(page);
      for (const more of await page.locator('main details').all())
        await more.evaluate((d: HTMLDetailsElement) => (d.open = true));
      expect(await words(), station).not.toMatch(/bust/i);
    }
    await walkTo(page, 'Record');
    const sheet = page.getByLabel('The printable sheet');
    await expect
      .poll(() => sheet.textContent())
      .toMatch(/Caution, nightwear: .*Caution, cords at the neck: /);
    await page.getByRole('radio', { name: 'no', exact: true }).check();
    await expect.poll(() => sheet.textContent()).not.toContain('Caution, nightwear');
  });

  it('a doubt stands under its field, marks the row, and is asked again at Next', async () => {
    const { page } = opened;
    await addPerson(page, 'Odile Fenn');
    await takeMeasure(page, 'waist', '83');
    const asked = row('waist-girth').locator('.ask');
    await asked.getByText(/Was it in centimetres/).waitFor();
    expect(await row('waist-girth').getAttribute('data-doubted')).toBe('true');
    await page.getByRole('link', { name: 'Next: choose a pattern for Odile Fenn' }).click();
    const stopped = page.getByRole('alert').filter({ hasText: 'One question is still open, about waist.' });
    await stopped.waitFor();
    await stopped.getByRole('button', { name: 'Answer it' }).click();
    expect(
      await row('waist-girth')
        .locator('input')
        .first()
        .evaluate((e) => e === document.activeElement),
    ).toBe(true);
    await takeMeasure(page, 'hip', '110');
    await row('hip-girth').getByRole('button', { name: 'It is right, keep it' }).click();
    await expect.poll(() => row('hip-girth').locator('.ask').count()).toBe(0);
    await asked.getByRole('button', { name: /^Yes/ }).first().click();
    await expect.poll(() => page.locator('.ask').count()).toBe(0);
    await expect.poll(() => page.getByLabel('waist', { exact: true }).inputValue()).toBe('32 11/16');
    await page.getByRole('link', { name: 'Next: choose a pattern for Odile Fenn' }).click();
    await page.getByRole('heading', { level: 1, name: 'Patterns' }).waitFor();
  });

  it('a shoulder drop stands in for the slope in degrees', async () => {
    const { page } = opened;
    await addPerson(page, 'Pim Fenn');
    for (const group of await page.locator('details.measures').all())
      await group.evaluate((d: HTMLDetailsElement) => (d.open = true));
    await takeMeasure(page, 'shoulder', '5');
    await takeMeasure(page, 'shoulder drop', '2 1/2');
    // 2 1/2 down for 5 along: the sine of 30°.
    await row('shoulder-slope').getByText('30.0° by the shoulder drop').waitFor();
    expect(opened.complaints).toEqual([]);
  });

  it('the drawing of the tape follows the field in use, not the mouse that rests', async () => {
    const { page } = opened;
    await walkTo(page, 'People');
    await page.getByRole('link', { name: 'Odile Fenn' }).click();
    const guide = page.getByRole('region', { name: 'Where the tape goes' }).getByRole('heading');
    await page.getByLabel('hip', { exact: true }).focus();
    await row('bust-girth').hover();
    await settled(page);
    expect(await guide.innerText()).toBe('hip');
    await page.getByLabel('Notes').focus();
    await row('upper-bust-girth').hover();
    await expect.poll(() => guide.innerText()).toBe('upper bust');
  });
});
