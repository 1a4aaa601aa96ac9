import { describe, expect, it } from 'vitest';
import { renderPhrase, t, TELL_BOTH, TELL_CM, TELL_IN } from '../garment/index.ts';
import { distance } from '../geometry/index.ts';
import type { Point } from '../geometry/index.ts';
import { cellsOf } from './cells.ts';
import type { Page } from './drawing.ts';
import { readPaper } from './paper-size.ts';
import { CHOICES, dartedSkirt, garmentOf, rectangle, straightPiece } from '../../test/hand-piece.ts';
import { drawFigures, printPages } from './sheet.ts';
import { OVERLAP_MM, sheetForTiles, tile, tileName } from './tile.ts';

const A4 = { width: 210, height: 297 };

describe('the tiles of a sheet', () => {
  it('are named by column and row', () => {
    expect([0, 25, 26, 52].map((column) => tileName({ column, row: 2 }))).toEqual(['A3', 'Z3', 'AA3', 'BA3']);
  });

  it('show every point of every piece, at one and the same place of the sheet', () => {
    const figures = drawFigures(garmentOf(dartedSkirt(), rectangle('band', 800, 60, 10)), CHOICES);
    const sheet = sheetForTiles(figures, A4);
    const pages = tile(sheet, A4, CHOICES).slice(1);
    // How a page lies on the sheet is read off its own lines: the first stroke point it shares with the sheet.
    for (const figure of sheet.figures) {
      for (const p of figure.ring) {
        const shown = pages.filter((page) => {
          const [column, row] = [page.label.charCodeAt(0) - 65, Number(page.label.slice(1)) - 1];
          const x = p.x - column * 180 + 10;
          const y = p.y - (sheet.height - row * 267) + 287;
          const w = page.window;
          return x >= w.minX - 1e-6 && x <= w.maxX + 1e-6 && y >= w.minY - 1e-6 && y <= w.maxY + 1e-6;
        });
        expect(shown.length).toBeGreaterThan(0);
      }
    }
  });

  it('leave out what holds no part of a piece, and keep what lies wholly inside one', () => {
    const grid = { cellWidth: 100, cellHeight: 100, top: 300 };
    const square = [
      { x: 10, y: 10 },
      { x: 290, y: 10 },
      { x: 290, y: 290 },
      { x: 10, y: 290 },
    ];
    expect(cellsOf([square], grid)).toHaveLength(9);
    const slanted = [
      { x: 5, y: 5 },
      { x: 15, y: 5 },
      { x: 295, y: 295 },
      { x: 285, y: 295 },
    ];
    expect(cellsOf([slanted], grid).map(tileName)).toEqual(['B1', 'C1', 'A2', 'B2', 'C2', 'A3', 'B3']);
  });

  it('are not printed for a hair that rounding puts over the border', () => {
    const edge = [
      { x: 0, y: 0 },
      { x: 100.000001, y: 0 },
      { x: 100.000001, y: 100 },
      { x: 0, y: 100 },
    ];
    expect(cellsOf([edge], { cellWidth: 100, cellHeight: 100, top: 100 })).toEqual([{ column: 0, row: 0 }]);
  });

  it('are trimmed at left and top only, and only where there is a neighbour', () => {
    const { pages } = printPages(garmentOf(rectangle('cloth', 300, 400)), CHOICES, readPaper('a4'));
    expect(pages.map((p) => p.label)).toEqual(['map', 'A1', 'B1', 'A2', 'B2']);
    const says = (label: string): string[] =>
      pages
        .find((p) => p.label === label)!
        .furniture.words.map((w) => w.text)
        .filter((t) => /trim|lay/.test(t));
    expect(says('A1')).toEqual(['lay B1 up to this line', 'lay A2 up to this line']);
    expect(says('B2')).toEqual(['trim here, then lay on A2', 'trim here, then lay on B1']);
  });

  it('carry match marks that fall together when one is laid on the other', () => {
    const { pages } = printPages(garmentOf(rectangle('cloth', 300, 400)), CHOICES, readPaper('letter'));
    const page = (label: string): Page => pages.find((p) => p.label === label)!;
    const marks = (p: Page): Point[] => p.furniture.strokes.filter((s) => s.filled).map((s) => s.path[3]!);
    // A1 → B1: the cell is as wide as the window less the strip that is glued under.
    const step = page('A1').window.maxX - page('A1').window.minX - OVERLAP_MM;
    const onA1 = marks(page('A1')).filter((m) => Math.abs(m.x - (page('A1').window.maxX - OVERLAP_MM)) < 5);
    const onB1 = marks(page('B1')).filter((m) => Math.abs(m.x - page('B1').window.minX) < 5);
    expect(onA1).toHaveLength(2);
    expect(onB1).toHaveLength(2);
    // Half marks point away from one another from the same base line: 4 mm left of it and 4 mm right of it.
    onA1.forEach((m, i) => expect(distance({ x: m.x - step + 8, y: m.y }, onB1[i]!)).toBeLessThan(1e-9));
  });
});

describe('the pages of a paper', () => {
  it('hold whole pieces where these fit, the first with the test squares', () => {
    const { pages, findings } = printPages(garmentOf(dartedSkirt()), CHOICES, readPaper('a0'));
    expect(pages).toHaveLength(1);
    expect(findings).toEqual([]);
    const squares = pages[0]!.drawn.words.map((w) => w.text);
    expect(squares).toContain('100 mm');
    expect(squares).toContain('4 in');
  });

  it.each([
    ['a4', TELL_CM, ['100 mm', '2 in'], '200 mm'],
    ['letter', TELL_IN, ['4 in', '50 mm'], '8 in'],
    ['a0', TELL_IN, ['4 in', '100 mm'], '8 in'],
  ] as const)('measure by the person’s own tape first, on %s', (paper, tell, sides, ruler) => {
    const { pages } = printPages(garmentOf(dartedSkirt()), { ...CHOICES, tell }, readPaper(paper));
    const said = [...pages[0]!.furniture.words, ...pages[0]!.drawn.words];
    expect(said.filter((w) => w.size === 4 && w.bold).map((w) => w.text)).toEqual(
      expect.arrayContaining([...sides]),
    );
    expect(said.filter((w) => w.size === 2.4).map((w) => w.text)).toContain(ruler);
  });

  it('halve the squares only where what must be read leaves no room', () => {
    const notes = Array.from({ length: 12 }, (_, i) => t`What must be read, ${i}.`);
    const { pages } = printPages(garmentOf(dartedSkirt()), { ...CHOICES, notes }, readPaper('letter'));
    expect(pages[0]!.furniture.words.filter((w) => w.size === 4 && w.bold).map((w) => w.text)).toEqual(
      expect.arrayContaining(['50 mm', '2 in']),
    );
  });

  it('bear on the first page what else the sewist must read, broken into lines', () => {
    const notes = [
      t`No cord or ribbon at the neck of a child’s garment: it can catch and strangle. Follow the rules where you live, and close the neck with a button and loop.`,
    ];
    const { pages } = printPages(
      garmentOf(rectangle('cloth', 300, 400)),
      { ...CHOICES, notes },
      readPaper('letter'),
    );
    const said = pages[0]!.furniture.words.map((w) => w.text);
    const first = said.findIndex((t) => t.startsWith('No cord'));
    expect(`${said[first]!} ${said[first + 1]!}`).toBe(renderPhrase(notes[0]!, TELL_BOTH));
    expect(pages.slice(1).flatMap((p) => p.furniture.words.map((w) => w.text))).not.toContain(said[first]);
  });

  it('keep on the first page the list of pieces clear of however much must be read, on whole sheets and on tiles', () => {
    const long = t`What must be read takes up a good deal more than one line of the first page, and stands above everything else that is printed there, so that what follows has to give way to it.`;
    const notes = Array.from({ length: 7 }, () => long);
    const pieces = Array.from({ length: 14 }, (_, i) => rectangle(`piece ${i}`, 60, 90));
    for (const paper of ['a0', 'a4', 'letter']) {
      const { pages } = printPages(garmentOf(...pieces), { ...CHOICES, notes }, readPaper(paper));
      const words = [...pages[0]!.drawn.words, ...pages[0]!.furniture.words];
      const noted = words.filter((w) => long.phrase.join('').includes(w.text) && w.text.length > 20);
      const listed = words.filter((w) => w.size === 3 && /^1 +Piece piece \d+$/.test(w.text));
      expect(listed.length, paper).toBeGreaterThanOrEqual(14);
      expect(Math.max(...listed.map((w) => w.at.y)), paper).toBeLessThan(
        Math.min(...noted.map((w) => w.at.y)),
      );
      const ruler = Math.min(...words.filter((w) => w.text === '150 mm').map((w) => w.at.y));
      expect(Math.min(...listed.map((w) => w.at.y)), paper).toBeGreaterThan(ruler);
    }
  });

  it('end a roll where the drawing ends', () => {
    const { pages } = printPages(garmentOf(dartedSkirt()), CHOICES, readPaper('roll-36'));
    expect(pages[0]!.width).toBeWithinMm(914.4, 1e-9);
    expect(pages[0]!.height).toBeLessThan(800);
  });

  it('say when a piece is too large even for a large sheet', () => {
    const { pages, findings } = printPages(garmentOf(rectangle('sail', 900, 1400)), CHOICES, readPaper('a0'));
    expect(findings.map((f) => f.code)).toEqual(['tiled']);
    expect(pages.length).toBeGreaterThan(3);
  });

  it('hold only the pieces asked for, and refuse unknown ones', () => {
    const garment = garmentOf(dartedSkirt(), rectangle('band', 100, 60, 10));
    const { pages } = printPages(garment, { ...CHOICES, pieces: ['band'] }, readPaper('a4'));
    const drawn = new Set(pages.flatMap((p) => p.drawn.strokes.map((s) => s.piece)));
    expect([...drawn].filter((p) => p !== undefined)).toEqual(['band']);
    expect(() => printPages(garment, { ...CHOICES, pieces: ['hat'] }, readPaper('a4'))).toThrow(/hat/);
  });

  it('take a piece as large as the window over the border of the cell, not cut it off', () => {
    const flush = straightPiece(
      'flush',
      [
        { x: 0, y: 0 },
        { x: 190, y: 0 },
        { x: 190, y: 277 },
        { x: 0, y: 277 },
      ],
      [],
      [0, 0, 0, 0],
    );
    const sheet = sheetForTiles(drawFigures(garmentOf(flush), CHOICES), A4);
    // 190 × 277 mm is the window; with its white it needs the next cells too.
    expect(tile(sheet, A4, CHOICES).map((p) => p.label)).toEqual(['map', 'A1', 'B1', 'A2', 'B2']);
  });
});
