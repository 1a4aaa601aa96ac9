import { describe, expect, it } from 'vitest';
import { DEFAULT_CHOICES, InputError, readPerson, writePerson } from '../index.ts';
import type { Body, Fitting } from '../index.ts';

const body: Body = {
  id: 'ada',
  name: 'Ada of the wardrobe',
  wearer: 'woman',
  show: 'in',
  waist: 'natural',
  readings: { 'bust-girth': [{ value: 1028.7, typed: '40 1/2 in', on: '2026-03-01' }] },
};
const fitting: Fitting = {
  format: 'pintrue-fitting',
  version: 2,
  id: 'f1',
  title: 'A table of my own',
  on: '2026-03-02',
  body,
  pattern: {
    format: 'pintrue-pattern',
    version: 2,
    id: 'p1',
    name: 'Table',
    about: '',
    garment: 'dress',
    wearer: 'woman',
    cloth: { kind: 'woven' },
    chart: {
      sizes: [{ id: '12', label: '12' }],
      waist: 'unsaid',
      body: { 'bust-girth': [880] },
      finished: {},
      finishedLengths: {},
    },
    pieces: [],
    seams: [],
    followers: [],
    bands: [],
    levels: [],
    cautions: [],
  },
  fabric: { name: 'wool', kind: 'woven' },
  choices: DEFAULT_CHOICES,
  steps: [],
  observations: [],
  paper: { paper: 'a4', allowances: true, nest: 'off' },
  notes: '',
};
const pathOf = (read: () => unknown): string | undefined => {
  try {
    read();
  } catch (error) {
    if (error instanceof InputError) return error.where.path;
  }
  return undefined;
};

describe('the file of everything kept of a person', () => {
  it('reads back as it was written, same person same bytes', () => {
    const text = writePerson({ body, fittings: [fitting] });
    const read = readPerson(text);
    expect(read.body).toEqual(body);
    expect(read.fittings).toHaveLength(1);
    expect(read.fittings[0]).toMatchObject({ id: 'f1', title: fitting.title, body });
    expect(writePerson(read)).toBe(text);
  });

  it.each([
    ['of version 1', { version: 1 }],
    ['without a version', {}],
  ])('reads what was written before it had a reader, %s: the body bare', (_, version) => {
    const old = { format: 'pintrue-person', ...version, body, fittings: [fitting] };
    expect(readPerson(JSON.stringify(old)).body).toEqual(body);
    expect(readPerson(old).fittings.map((f) => f.id)).toEqual(['f1']);
  });

  it('says where in the file something is wrong, to the last field of a fitting', () => {
    const good = JSON.parse(writePerson({ body, fittings: [fitting, fitting] })) as {
      body: object;
      fittings: object[];
    };
    expect(pathOf(() => readPerson({ ...good, body: { ...good.body, wearer: 'cat' } }))).toBe('body.wearer');
    const bad = { ...good.fittings[1], on: 'yesterday' };
    expect(pathOf(() => readPerson({ ...good, fittings: [good.fittings[0], bad] }))).toBe('fittings[1].on');
    expect(pathOf(() => readPerson({ ...good, version: 4 }))).toBe('version');
  });
});
