import { describe, expect, it } from 'vitest';
import { levelled } from '../exchange/index.ts';
import { readPattern, type Pattern } from '../garment/index.ts';
import { measureNest } from '../measure/index.ts';
import { sample } from '../samples/index.ts';
import {
  agreeLevel,
  dropLevel,
  levelHeights,
  moveLevel,
  proposeAgain,
  putGarment,
  putLevel,
} from './edit-levels.ts';

const skirt = sample('a-line-skirt');
const front = skirt.pieces.find((piece) => piece.id === 'front') ?? skirt.pieces[0]!;
const hipOf = (p: Pattern) => measureNest(p)['hip']!;
const side = (p: Pattern) =>
  p.pieces.find((piece) => piece.id === front.id)!.edges.find((edge) => edge.role === 'side')!;

describe('a level line on a piece', () => {
  it('moved down measures a wider skirt, its sides cross it farther down, and moved back all is as before', () => {
    const down = moveLevel(skirt, front.id, 'hip', -25);
    expect(() => readPattern(down)).not.toThrow();
    // An A-line skirt widens downwards: the front half alone is moved, so that about half of the growth of 25 mm shows.
    hipOf(down).forEach((girth, k) => expect(girth!).toBeGreaterThan(hipOf(skirt)[k]!));
    const back = moveLevel(down, front.id, 'hip', 25);
    hipOf(back).forEach((girth, k) => expect(girth!).toBeWithinMm(hipOf(skirt)[k]!, 0.01));
    const at = (p: Pattern) => side(p).crossings.find((one) => one.level === 'hip')!.at;
    at(back).forEach((share, k) => expect(share).toBeCloseTo(at(skirt)[k]!, 4));
  });

  it('taken away is no longer measured on that piece, and drawn again it is', () => {
    const without = dropLevel(skirt, front.id, 'hip');
    expect(without.levels.find((one) => one.level === 'hip')!.pieces).not.toContain(front.id);
    expect(side(without).crossings.map((one) => one.level)).not.toContain('hip');
    const again = putLevel(without, front.id, 'hip', levelHeights(front, 'hip')!);
    hipOf(again).forEach((girth, k) => expect(girth!).toBeWithinMm(hipOf(skirt)[k]!, 0.01));
    expect(again.levels.map((one) => one.level)).toEqual(skirt.levels.map((one) => one.level));
  });

  it('stays where it is when it would leave the piece', () => {
    expect(moveLevel(skirt, front.id, 'hip', 5000)).toBe(skirt);
  });

  it('is proposed where a pattern has none, and stands as said once somebody agreed', () => {
    const bare: Pattern = {
      ...skirt,
      levels: [],
      pieces: skirt.pieces.map((piece) => ({
        ...piece,
        lines: piece.lines.filter((line) => line.kind !== 'level'),
        edges: piece.edges.map((edge) => ({ ...edge, crossings: [] })),
      })),
    };
    const proposed = proposeAgain(bare);
    expect(() => readPattern(proposed)).not.toThrow();
    expect(proposed.levels.map((one) => one.level)).toEqual(['waist', 'hip']);
    const hip = (p: Pattern) =>
      p.pieces.flatMap((piece) =>
        piece.lines.filter((line) => line.level === 'hip').map((line) => line.proposed),
      );
    expect(new Set(hip(proposed))).toEqual(new Set(['chart-depth', 'as-parent']));
    expect(new Set(hip(agreeLevel(proposed, 'hip')))).toEqual(new Set([undefined]));
  });

  it('leaves the corners that a person gave another level', () => {
    const said: Pattern = {
      ...skirt,
      pieces: skirt.pieces.map((piece) =>
        piece.id === front.id
          ? { ...piece, edges: piece.edges.map((edge, i) => (i === 0 ? { ...edge, from: 'knee' } : edge)) }
          : piece,
      ),
    };
    const moved = moveLevel(said, front.id, 'hip', -10);
    expect(moved.pieces.find((piece) => piece.id === front.id)!.edges[0]!.from).toBe('knee');
  });

  it('corners leave the neck and the armhole when a pattern is said to be a skirt, and come back', () => {
    const top = putGarment(skirt, 'top');
    const corners = (p: Pattern) => p.pieces.map((piece) => piece.edges.map((one) => one.from));
    expect(corners(putGarment(top, 'skirt'))).toEqual(corners(skirt));
    const yoked: Pattern = {
      ...skirt,
      garment: 'top',
      pieces: skirt.pieces.map((piece) => ({
        ...piece,
        lines: [],
        edges: piece.edges.map((one) => ({
          ...one,
          crossings: [],
          ...(one.role === 'waist' ? { role: 'yoke' as const } : {}),
        })),
      })),
    };
    const asRead = { ...yoked, pieces: yoked.pieces.map((piece) => levelled(piece, 'top')) };
    expect(corners(asRead).flat()).toContain('armhole');
    expect(corners(putGarment(asRead, 'skirt')).flat()).not.toContain('armhole');
    expect(corners(putGarment(asRead, 'skirt')).flat()).not.toContain('neck');
  });
});
