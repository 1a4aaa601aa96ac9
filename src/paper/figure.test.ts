import { describe, expect, it } from 'vitest';
import { NOTCH_GAP_MM } from '../cut/index.ts';
import {
  distance,
  nearestPlace,
  pathEnd,
  pathLength,
  pathStart,
  ringContains,
  turnAbout,
} from '../geometry/index.ts';
import { renderPhrase, TELL_BOTH, type Pattern } from '../garment/index.ts';
import { allowanceWords } from './printed-words.ts';
import { drawFigure } from './figure.ts';
import { LAYERS } from './ink.ts';
import { CHOICES, dartedSkirt, rectangle } from '../../test/hand-piece.ts';
import { movePiece, uprightTurn } from './upright.ts';

const none = (): undefined => undefined;

describe('a piece drawn', () => {
  const piece = dartedSkirt();
  const figure = drawFigure(piece, none, CHOICES);
  const of = (layer: string) => figure.strokes.filter((s) => s.layer === layer);

  it('has every kind of line on its layer', () => {
    const layers = new Set(figure.strokes.map((s) => s.layer));
    for (const layer of [
      'cutting',
      'stitching',
      'fold',
      'notches',
      'grain',
      'levels',
      'adjust',
      'inner',
      'marks',
    ]) {
      expect(layers, layer).toContain(layer);
    }
  });

  it('has no cutting line along its fold', () => {
    for (const s of of('cutting')) {
      const both = [pathStart(s.path), pathEnd(s.path)];
      expect(both.every((p) => Math.abs(p.x) < 0.01)).toBe(false);
    }
  });

  it('has its notches on the cutting line, pointing in and short of the stitching line', () => {
    const notches = of('notches');
    expect(notches).toHaveLength(2);
    const stitching = piece.edges[1]!.path;
    for (const { path } of notches) {
      expect(nearestPlace(stitching, pathStart(path)).distance).toBeWithinMm(15, 0.01);
      expect(nearestPlace(stitching, pathEnd(path)).distance).toBeWithinMm(10, 0.01);
    }
    expect(distance(pathStart(notches[0]!.path), pathStart(notches[1]!.path))).toBeWithinMm(
      NOTCH_GAP_MM,
      0.01,
    );
  });

  it('is named inside of its outline with number, cut, size, person and date', () => {
    const label = figure.words.filter((w) => w.layer === 'labels');
    expect(label.map((w) => w.text)).toEqual([
      '3  Skirt',
      'Cut 1 on the fold of the main cloth',
      'Trial',
      'Bust 92 · for Ilse',
      'Included: seams 12 mm (1/2 in) to 15 mm (9/16 in), hem 40 mm (1 9/16 in)',
      '2026-11-25',
    ]);
    for (const w of label) expect(ringContains(figure.ring, w.at)).toBe(true);
  });

  it('without allowances shows one solid line, the stitching line, and says so', () => {
    const bare = drawFigure(piece, none, { ...CHOICES, allowances: false });
    expect(bare.strokes.some((s) => s.layer === 'cutting')).toBe(false);
    const solid = bare.strokes.filter((s) => s.layer === 'stitching' && s.ink?.dash?.length === 0);
    expect(solid.map((s) => s.edge)).toEqual(['hem', 'side', 'waist-side', 'waist-centre']);
    expect(bare.words.map((w) => w.text)).toContain('No allowances: add them outside of this line');
  });

  it('is turned so that its grainline runs up, by the smaller turn', () => {
    const tilted = movePiece(piece, turnAbout({ x: 0, y: 0 }, -0.7));
    const turn = uprightTurn(tilted);
    expect(turn.angle).toBeCloseTo(0.7, 9);
    const grain = movePiece(tilted, turn).lines[0]!.path;
    expect(pathStart(grain).x).toBeWithinMm(pathEnd(grain).x, 1e-9);
    expect(pathLength(grain)).toBeWithinMm(320, 1e-6);
    expect(uprightTurn(rectangle('r', 10, 10)).angle).toBe(0);
  });

  it('shows the other sizes faintly, each with a dash of its own, and not beyond its own room', () => {
    const box = rectangle('r', 100, 200, 10);
    const pattern = {
      chart: { sizes: [{ id: 'S' }, { id: 'M' }, { id: 'L' }] },
      pieces: [
        {
          id: 'r',
          edges: box.edges.map((e) => ({
            ...e,
            path: [0.8, 1, 3].map((k) => e.path.map((p) => ({ x: p.x * k, y: p.y * k }))),
          })),
        },
      ],
    } as unknown as Pattern;
    const drawn = drawFigure(box, none, { ...CHOICES, nest: pattern });
    const nest = drawn.strokes.filter((s) => s.layer === 'nest');
    expect(new Set(nest.map((s) => JSON.stringify(s.ink?.dash))).size).toBe(3);
    for (const s of nest) for (const p of s.path) expect(p.x).toBeLessThan(110 + 4.01);
    expect(drawn.strokes.findIndex((s) => s.layer === 'nest')).toBe(0);
  });
});

describe('words on a piece', () => {
  it('say what is included, in both systems', () => {
    const said = (width: number): string =>
      renderPhrase(allowanceWords(rectangle('r', 10, 10, width), true), TELL_BOTH);
    expect(said(15)).toBe('Included: seams 15 mm (9/16 in)');
    expect(said(0)).toBe('No allowances needed');
  });
});

describe('the inks', () => {
  it('are told apart in black and white: no two layers of lines have the same weight and dash and grey', () => {
    // Grain, marks and notches are told by their shape; words and page furniture are not lines of the piece.
    const lines = LAYERS.filter((l) => !['grain', 'marks', 'labels', 'page'].includes(l.id));
    const looks = lines.map(({ ink }) => `${ink.width} ${ink.dash.join(',')} ${ink.grey}`);
    expect(new Set(looks).size).toBe(lines.length);
    const heaviest = lines.toSorted((a, b) => b.ink.width - a.ink.width)[0]!;
    expect(heaviest.id).toBe('cutting');
  });
});
