import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { drawingSvg, patternSheet } from '../../src/exchange/index.ts';
import { sample } from '../../src/samples/index.ts';
import { addPerson, beginFitting, chooseSmock, settled, takeMeasure, walkTo } from './hands.ts';
import { openPage, type Opened } from './open-page.ts';
import { photograph } from './skirt-photograph.ts';

/** axe-core (Deque, MPL-2.0), an outside judge of accessibility: every rule it has for WCAG 2.2 A and AA and its best practices. */
const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

interface Violation {
  readonly id: string;
  readonly nodes: readonly { readonly html: string; readonly failureSummary: string }[];
}

async function audit({ page }: Opened): Promise<string[]> {
  // Evaluated by the debugger, so that the page's own policy (no foreign script) stays as it is.
  await page.evaluate(AXE);
  const found = await page.evaluate(async () => {
    // From the top: what happens to be half under the tape, scrolled, is no target that is too small.
    scrollTo(0, 0);
    const { axe } = globalThis as unknown as {
      axe: { run: (options: object) => Promise<{ violations: Violation[] }> };
    };
    return (await axe.run({ resultTypes: ['violations'], rules: { 'target-size': { enabled: true } } }))
      .violations;
  });
  return found.flatMap((v) =>
    v.nodes.map(
      (n) => `${v.id}: ${n.html.slice(0, 160)} ${n.failureSummary.replaceAll(/\s+/g, ' ').slice(0, 240)}`,
    ),
  );
}

/** Buttons, links, fields and handles under the finger that are smaller than they may be; what lies inside a line of text, in a chart or in a drawing is excepted. */
async function smallTargets({ page }: Opened): Promise<string[]> {
  return page.evaluate(() =>
    [
      ...document.querySelectorAll<HTMLElement>(
        'button, a[href], select, summary, input:not([type=checkbox], [type=radio], [type=file])',
      ),
    ]
      .filter((e) => !e.closest('p, .chart, svg, dialog:not([open])') && e.checkVisibility())
      .map((e) => ({ e, r: e.getBoundingClientRect() }))
      .filter(({ r }) => r.width > 2 && r.height > 0 && r.bottom > 0)
      .filter(({ r }) => r.height < 43.5 || r.width < 43.5)
      .map(({ e, r }) => `${Math.round(r.width)} × ${Math.round(r.height)}: ${e.outerHTML.slice(0, 120)}`),
  );
}

const STATIONS = ['Fit', 'Pieces', 'Trial notes', 'To settle', 'Record', 'Cloth', 'Paper'] as const;

for (const light of ['day', 'night'] as const) {
  describe(`axe finds nothing, by ${light}`, () => {
    let opened: Opened;
    beforeAll(async () => {
      opened = await openPage({ dark: light === 'night' });
    });
    afterAll(() => opened.close());

    const sound = async (): Promise<void> => {
      await settled(opened.page);
      expect(await audit(opened)).toEqual([]);
      expect(await smallTargets(opened)).toEqual([]);
    };

    it('on the first page, with nothing kept', sound);

    it('on empty people and patterns', async () => {
      for (const station of ['People', 'Patterns']) {
        await walkTo(opened.page, station);
        await sound();
      }
    });

    it('on a person, a pattern and every station of a fitting', async () => {
      await beginFitting(opened.page);
      const fitting = opened.page.url();
      for (const station of STATIONS) {
        await walkTo(opened.page, station);
        await sound();
      }
      await walkTo(opened.page, 'People');
      await opened.page.getByRole('link', { name: 'Odile Fenn' }).click();
      await sound();
      await walkTo(opened.page, 'Patterns');
      await opened.page.getByRole('link', { name: 'Stage bodice' }).click();
      await sound();
      await opened.page.goto(`${opened.url}#/`);
      await sound();
      await opened.page.goto(fitting);
    });

    it('on a child and a smock, with what is asked and said of a child’s garment', async () => {
      const { page } = opened;
      await addPerson(page, 'Nell Fenn');
      await page.getByLabel('Body').selectOption('child');
      await takeMeasure(page, 'waist', '60');
      await page
        .locator('.ask')
        .getByText(/Was it in centimetres/)
        .waitFor();
      await page.getByRole('link', { name: 'Next: choose a pattern for Nell Fenn' }).click();
      await page.getByText('One question is still open').waitFor();
      await sound();
      await page.getByRole('button', { name: /^Yes/ }).click();
      await chooseSmock(page, 'Nell Fenn');
      const cautions = page.getByRole('region', { name: 'Cautions for this garment' });
      await cautions
        .getByText(/EN 14682/)
        .first()
        .waitFor();
      await sound();
      await page
        .getByRole('group', { name: 'Will the child sleep or lounge in it?' })
        .getByRole('radio', { name: 'no' })
        .check();
      await expect.poll(() => cautions.getByText(/16 CFR 1615/).count()).toBe(0);
      await sound();
    });

    it('on a photograph, laid flat and traced', async () => {
      const { page } = opened;
      const other = await opened.context.newPage();
      const photo = await photograph(other);
      await other.close();
      await page.goto(`${opened.url}#/patterns/from-a-photo`);
      await page.getByRole('heading', { name: /sheet of paper beside it/ }).waitFor();
      await sound();
      await page
        .locator('.filepick input')
        .setInputFiles({ name: 'quarter skirt.png', mimeType: 'image/png', buffer: photo });
      await page.getByText('The sheet was found.').waitFor({ timeout: 30_000 });
      await sound();
      await page.getByLabel('The sheet is').selectOption({ label: 'A4' });
      await page.getByRole('button', { name: 'Lay it flat' }).click();
      const cross = page.getByRole('button', { name: /^crosshair/ });
      await cross.waitFor({ timeout: 30_000 });
      await cross.focus();
      for (const key of ['Enter', 'ArrowRight', 'Enter', 'ArrowUp', 'Enter', 'c'])
        await page.keyboard.press(key);
      await page.getByRole('button', { name: 'Next size outwards' }).waitFor({ timeout: 30_000 });
      await sound();
    });

    it('on a file that was brought in, with what was found in it', async () => {
      const { page } = opened;
      await page.goto(`${opened.url}#/patterns/from-a-file`);
      await sound();
      await page.locator('.filepick input').setInputFiles({
        name: 'skirt.svg',
        mimeType: 'image/svg+xml',
        buffer: Buffer.from(drawingSvg(patternSheet(sample('a-line-skirt'), { semantics: false }).drawing)),
      });
      await page.locator('#found-head').waitFor({ timeout: 120_000 });
      await sound();
    });

    it('on the cloth with everything said of it open, a piece pinned and a width that is too narrow', async () => {
      const { page } = opened;
      await page.goto(`${opened.url}#/`);
      await page.locator('.card > a').first().click();
      await walkTo(page, 'Cloth');
      await page.locator('.lying').first().waitFor({ timeout: 60_000 });
      await page.locator('.lying').first().press('Enter');
      await page.getByText(/is pinned$/).waitFor();
      await page
        .locator('main details')
        .evaluateAll((all) => all.forEach((d) => ((d as HTMLDetailsElement).open = true)));
      await sound();
      const width = page.getByLabel('or another', { exact: true });
      await width.fill('9');
      await width.press('Enter');
      await page.getByRole('alert').waitFor();
      await sound();
    });

    it('with each hand on the pieces, and an alteration open', async () => {
      const { page } = opened;
      await walkTo(page, 'Pieces');
      for (const hand of ['Alter', 'Measure', 'Walk a seam', 'Put together', 'Look']) {
        await page.getByRole('button', { name: hand, exact: true }).click();
        await sound();
      }
      await page.getByRole('button', { name: /^1 Centre front\. Cut/ }).click();
      await sound();
      await page.getByRole('button', { name: 'Alter', exact: true }).click();
      await page.getByRole('button', { name: 'Add one' }).click();
      await sound();
      await page.getByRole('button', { name: /Length above the waist/ }).click();
      await page.getByRole('slider').first().waitFor();
      await sound();
      expect(opened.complaints).toEqual([]);
      expect(opened.strangers).toEqual([]);
    });
  });
}
