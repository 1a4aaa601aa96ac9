import { readFileSync, readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { CATALOGUE, GROUPS } from '../src/alter/index.ts';
import { renderPhrase, TELL_BOTH } from '../src/garment/index.ts';
import { alterationPicture } from '../scripts/alteration-picture.ts';
import { PAGE, PICTURES, alterationsPage } from '../scripts/alterations-page.ts';

describe('docs/alterations.md', () => {
  const page = readFileSync(PAGE, 'utf8');

  it('says what the catalogue says: make it anew with `npx tsx scripts/alterations-page.ts`', async () => {
    expect(page).toBe(await alterationsPage());
  });

  it('lists every entry by its trade name with all it takes', () => {
    for (const entry of CATALOGUE) {
      const name = renderPhrase(entry.name, TELL_BOTH);
      const from = page.indexOf(`### ${name}\n`);
      expect(from, name).toBeGreaterThan(0);
      const own = page.slice(from, page.indexOf('\n##', from + 1) + 1 || undefined);
      expect(own).toContain(`\`${entry.id}\``);
      for (const param of entry.params) expect(own, name).toContain(`\`${param.id}\``);
    }
  });

  it('shows every entry in a drawing made by the alteration itself, and no other', () => {
    expect(readdirSync(PICTURES).toSorted()).toEqual(CATALOGUE.map((a) => `${a.id}.svg`).toSorted());
    for (const entry of CATALOGUE) {
      expect(readFileSync(`${PICTURES}${entry.id}.svg`, 'utf8'), entry.id).toBe(alterationPicture(entry));
      expect(page).toContain(`(pictures/alterations/${entry.id}.svg)`);
    }
  });

  it('draws a difference for every entry', () => {
    for (const entry of CATALOGUE) {
      const [before, after] = [...alterationPicture(entry).matchAll(/<path d="([^"]*)"/g)].map((m) => m[1]!);
      expect(after, entry.id).toMatch(/^M/);
      expect(after, entry.id).not.toBe(before);
    }
  });

  it('has a chapter for every group', () => {
    for (const group of GROUPS) expect(page.toLowerCase()).toContain(`## ${group}`);
  });
});
