import type { Locator, Page } from 'playwright-core';
import { expect } from 'vitest';

/** What a person does, in their words, for the tests to read as stories. */

export async function walkTo(page: Page, station: string): Promise<void> {
  const link = page.getByRole('navigation', { name: 'The job' }).getByRole('link', { name: station });
  await link.click();
  await link.and(page.locator('[aria-current="page"]')).waitFor();
}

/** Waits until the page shows what it has to show: nothing is being fetched or drawn (a lay in search goes on), the letters are there, nothing is on its way. */
export async function settled(page: Page): Promise<void> {
  const underWay = async (): Promise<string[]> => [
    ...(await page.getByRole('status').filter({ hasText: /…$/ }).allTextContents()),
    ...(await page
      .locator('[role="progressbar"]:not([aria-label="Looking for a shorter lay"])')
      .evaluateAll((bars) => bars.map((b) => b.getAttribute('aria-label') ?? ''))),
  ];
  await expect.poll(underWay, { timeout: 60_000 }).toEqual([]);
  await page.evaluate(async () => {
    await document.fonts.ready;
    const ends = document
      .getAnimations()
      .filter((a) => a.effect?.getComputedTiming().iterations !== Infinity)
      .map((a) => a.finished.catch(() => undefined));
    await Promise.all(ends);
    await new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)));
  });
}

/** Waits until everything typed and done is on the disk and not only noted. */
export async function onDisk(page: Page): Promise<void> {
  await page.waitForFunction(() => !Object.keys(localStorage).some((k) => k.startsWith('pintrue-noted/')));
}

export async function addPerson(page: Page, name: string): Promise<void> {
  await walkTo(page, 'People');
  await page.getByLabel('Name of the new person').fill(name);
  await page.getByRole('button', { name: 'Add a person' }).click();
  await page.getByRole('heading', { level: 1, name }).waitFor();
}

/** Types a first reading and leaves the field by Enter. */
export async function takeMeasure(page: Page, measure: string, typed: string): Promise<void> {
  const field = page.getByLabel(measure, { exact: true });
  await field.fill(typed);
  await field.press('Enter');
}

const ODILE: Readonly<Record<string, string>> = {
  bust: '40 1/2',
  'upper bust': '37 1/2',
  waist: '33',
  hip: '43',
  'back waist length': '15 1/2',
  'front waist length': '17 1/4',
};

/** A person with six measures, and a fitting of the stage bodice for them. */
export async function beginFitting(page: Page, name = 'Odile Fenn', pattern = 'Stage bodice'): Promise<void> {
  await addPerson(page, name);
  for (const [measure, typed] of Object.entries(ODILE)) await takeMeasure(page, measure, typed);
  await page.getByRole('link', { name: `Next: choose a pattern for ${name}` }).click();
  await page
    .getByRole('listitem')
    .filter({ hasText: pattern })
    .getByRole('button', { name: 'Put it in the cupboard' })
    .click();
  await page.getByRole('button', { name: 'Begin the fitting' }).click();
  await page.getByRole('heading', { name: 'The plan, level by level' }).waitFor();
}

/** The child's smock for the person whose sheet is open, up to the button that begins the fitting. */
export async function chooseSmock(page: Page, name: string): Promise<Locator> {
  await page.getByRole('link', { name: `Next: choose a pattern for ${name}` }).click();
  await page
    .getByRole('listitem')
    .filter({ hasText: 'Chorus smock' })
    .getByRole('button', { name: 'Put it in the cupboard' })
    .click();
  return page.getByRole('button', { name: 'Begin the fitting' });
}

/** Answers what only a person can say of a drawing that was brought in: stitching lines, a woven, for a woman. */
export async function answerAsks(page: Page): Promise<void> {
  for (const [question, answer] of [
    ['What are the printed lines?', /^Stitching lines/],
    ['Which cloth is it drafted for?', /^A woven cloth/],
    ['For whom is it?', /^A woman/],
  ] as const)
    await page.getByRole('group', { name: question }).getByRole('radio', { name: answer }).check();
}
