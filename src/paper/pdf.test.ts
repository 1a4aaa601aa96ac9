import { PDFDocument, PDFName } from '@cantoo/pdf-lib';
import { describe, expect, it } from 'vitest';
import { TELL_CM } from '../garment/index.ts';
import { readPaper } from './paper-size.ts';
import { pdf } from './pdf.ts';
import { CHOICES, dartedSkirt, garmentOf } from '../../test/hand-piece.ts';
import { printPages, sheet } from './sheet.ts';
import { pageSvg, svg } from './svg.ts';

const made = (paper: string) => printPages(garmentOf(dartedSkirt()), CHOICES, readPaper(paper)).pages;

describe('the PDF', () => {
  it('is the same bytes for the same pages', async () => {
    const [a, b] = [await pdf(made('a4'), CHOICES), await pdf(made('a4'), CHOICES)];
    expect(Buffer.from(a.bytes).equals(Buffer.from(b.bytes))).toBe(true);
  });

  it('has the paper’s true size on every page and asks not to be scaled', async () => {
    const pages = made('letter');
    const { bytes } = await pdf(pages, CHOICES);
    const read = await PDFDocument.load(bytes);
    expect(read.getPageCount()).toBe(pages.length);
    for (const page of read.getPages()) {
      expect(page.getWidth()).toBeCloseTo(612, 6);
      expect(page.getHeight()).toBeCloseTo(792, 6);
    }
    expect(read.catalog.get(PDFName.of('ViewerPreferences'))!.toString()).toContain('/PrintScaling /None');
  });

  it('says which letters of a name it cannot print', async () => {
    const { findings } = await pdf(made('a0'), { ...CHOICES, person: 'x' });
    expect(findings).toEqual([]);
    const pages = printPages(
      garmentOf(dartedSkirt()),
      { ...CHOICES, person: 'Łucja Ωmega' },
      readPaper('a0'),
    ).pages;
    const told = await pdf(pages, CHOICES);
    expect(told.findings.map((f) => f.code)).toEqual(['letters-replaced']);
    expect(told.findings[0]!.values).toMatchObject({ letters: expect.arrayContaining(['Ω']) });
  });
});

describe('the SVG', () => {
  it('has the true size in mm and a group per layer', () => {
    const made = sheet(garmentOf(dartedSkirt()), CHOICES);
    const text = svg(made, { title: 'Trial & error', tell: TELL_CM });
    expect(text).toContain(`width="${Math.round(made.width * 1000) / 1000}mm"`);
    expect(text).toContain('<title>Trial &amp; error</title>');
    for (const layer of ['cutting', 'stitching', 'grain', 'notches']) {
      expect(text.match(new RegExp(`data-layer="${layer}"`, 'g'))).toHaveLength(1);
    }
    expect(text).not.toMatch(/NaN|undefined/);
  });

  it('of a page is cut off at the same window', () => {
    const page = made('a4')[1]!;
    const text = pageSvg(page, CHOICES);
    expect(text).toContain('width="210mm" height="297mm"');
    expect(text).toContain('<rect x="10" y="10" width="190" height="277"/>');
  });
});
