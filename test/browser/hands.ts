import type { Page } from 'playwright-core';

/** What a person does, in their words, for the tests to read as stories. */

export async function walkTo(page: Page, station: string): Promise<void> {
  await page.getByRole('navigation', { name: 'The job' }).getByRole('link', { name: station }).click();
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

export const ODILE: Readonly<Record<string, string>> = {
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
