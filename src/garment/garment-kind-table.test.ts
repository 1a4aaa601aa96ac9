import { describe, expect, it } from 'vitest';
import { GARMENT_KINDS, fromShoulder, garmentKind, kindOfLevels } from './garment-kind-table.ts';
import { LEVELS } from './level.ts';
import { MEASURES } from './measure/measure.ts';

describe('kinds of garment', () => {
  it('hang from the shoulder or begin at the waist: skirts and trousers begin there', () => {
    expect(GARMENT_KINDS.filter((kind) => !fromShoulder(kind))).toEqual(['skirt', 'trousers']);
    expect(GARMENT_KINDS.filter((kind) => garmentKind(kind).legs)).toEqual(['trousers']);
  });

  it.each(GARMENT_KINDS)('know only levels and measures that there are: %s', (kind) => {
    const { covers, sizedBy, hungBy } = garmentKind(kind);
    expect(covers.filter((level) => !LEVELS.some((l) => l.level === level))).toEqual([]);
    expect([...sizedBy, hungBy].filter((id) => MEASURES[id] === undefined)).toEqual([]);
  });

  it('take a table with a bust for a dress, any other for a skirt', () => {
    expect(kindOfLevels(['waist', 'bust', 'hip'])).toBe('dress');
    expect(kindOfLevels(['waist', 'hip'])).toBe('skirt');
  });
});
