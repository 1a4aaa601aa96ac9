import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { CATALOGUE, GROUPS } from '../src/alter/index.ts';
import { PAGE, alterationsPage } from '../scripts/alterations-page.ts';

describe('docs/alterations.md', () => {
  const page = readFileSync(PAGE, 'utf8');

  it('says what the catalogue says: make it anew with `npx tsx scripts/alterations-page.ts`', async () => {
    expect(page).toBe(await alterationsPage());
  });

  it('lists every entry by its trade name with all it takes', () => {
    for (const entry of CATALOGUE) {
      const from = page.indexOf(`### ${entry.name}\n`);
      expect(from, entry.name).toBeGreaterThan(0);
      const own = page.slice(from, page.indexOf('\n##', from + 1) + 1 || undefined);
      expect(own).toContain(`\`${entry.id}\``);
      for (const param of entry.params) expect(own, entry.name).toContain(`\`${param.id}\``);
    }
  });

  it('has a chapter for every group', () => {
    for (const group of GROUPS) expect(page.toLowerCase()).toContain(`## ${group}`);
  });
});
