// The knit tee drawn without semantics and without words; what it truly is, its sample says.
import { t } from '../../garment/index.ts';
import { describe, expect, it } from 'vitest';
import { pathStart } from '../../geometry/index.ts';
import { sample } from '../../samples/index.ts';
import { recognise } from '../find/recognise.ts';
import { patternSheet } from '../write/sheet.ts';
import { patternFrom } from './pattern.ts';
import type { PieceCorrection } from './corrections.ts';
import { rolesAsTold } from './told.ts';

const TEE = sample('knit-tee');
const bare = () => recognise({ ...patternSheet(TEE, { semantics: false }).drawing, texts: [] });

describe('a role that a person says', () => {
  it('stands, and the rest of the pattern follows it', () => {
    const proposal = bare();
    const fronts = proposal.pieces.filter((piece) => piece.role === 'front');
    expect(fronts.length).toBe(1);
    const { pieces } = rolesAsTold(proposal, { pieces: { [fronts[0]!.id]: { role: 'back', half: 'back' } } });
    const [told, other] = [
      pieces.find((piece) => piece.id === fronts[0]!.id)!,
      pieces.find((piece) => piece.role === 'front')!,
    ];
    expect(told).toMatchObject({ role: 'back', half: 'back', confidence: 1, because: t`as told` });
    expect(other.id).toBe(proposal.pieces.find((piece) => piece.role === 'back')!.id);
  });

  it('of an edge keeps its neighbours in order', () => {
    const proposal = bare();
    const front = proposal.pieces.find((piece) => piece.role === 'front')!;
    const side = front.edges.find((edge) => edge.role === 'side')!;
    const { pieces } = rolesAsTold(proposal, {
      pieces: { [front.id]: { edges: { [side.id]: { role: 'panel' } } } },
    });
    const again = pieces.find((piece) => piece.id === front.id)!;
    expect(again.edges.find((edge) => edge.id === side.id)).toMatchObject({ role: 'panel', confidence: 1 });
    expect(again.edges.map((edge) => edge.role).filter((role) => role === 'armhole')).toEqual(['armhole']);
  });
});

describe('the seams', () => {
  const firsts = ({ seams }: ReturnType<typeof bare>) =>
    seams
      .filter((seam) => seam.rank === 1)
      .map((seam) => seam.id)
      .toSorted();
  const proposal = bare();
  const front = proposal.pieces.find((piece) => piece.role === 'front')!;
  const joining = ({ seams }: ReturnType<typeof bare>, piece: string, edge: string) =>
    seams.filter((seam) => [...seam.a, ...seam.b].some((ref) => ref.piece === piece && ref.edge === edge));

  it('follow what a person says an edge is: a hem is sewn to nothing', () => {
    const side = front.edges.find((edge) => edge.role === 'side')!;
    expect(joining(proposal, front.id, side.id)[0]!.rank).toBe(1);
    const said = { pieces: { [front.id]: { edges: { [side.id]: { role: 'hem' } } } } } as const;
    const told = rolesAsTold(proposal, said);
    expect(joining(told, front.id, side.id).filter((seam) => seam.rank === 1)).toEqual([]);
    const { pattern } = patternFrom(proposal, { ...said, garment: 'top' });
    const made = pattern.pieces.find((piece) => piece.name === front.name)!;
    const hem = made.edges.find((edge) => edge.name === side.name)!;
    expect(hem.role).toBe('hem');
    expect(
      pattern.seams.filter((seam) =>
        [...seam.a, ...seam.b].some((ref) => ref.piece === made.id && ref.edge === hem.id),
      ),
    ).toEqual([]);
  });

  it('of a band stay as they are where the halves of the edge its underlap was cut off are said to be what they were thought', () => {
    const skirt = recognise(patternSheet(sample('a-line-skirt'), { semantics: false }).drawing);
    const band = skirt.pieces.find((piece) => piece.role === 'waistband')!;
    expect(band.edges.map((edge) => edge.role).toSorted()).toEqual([
      'attached',
      'end',
      'end',
      'opening',
      'outer',
    ]);
    const edges = Object.fromEntries(band.edges.map((edge) => [edge.id, { role: edge.role! }]));
    const told = rolesAsTold(skirt, { pieces: { [band.id]: { edges } } });
    expect(told.pieces.find((piece) => piece.id === band.id)!.edges.map((edge) => edge.id)).toEqual(
      band.edges.map((edge) => edge.id),
    );
    expect(firsts(told)).toEqual(firsts(skirt));
  });

  it('that a person joins stand for those that were found of the same edges', () => {
    const found = proposal.seams.find(
      (seam) => seam.rank === 1 && seam.a.length === 1 && seam.b.length === 1,
    )!;
    const add = [{ name: 'Joined by hand', a: found.b, b: found.a }];
    const { pattern } = patternFrom(proposal, { garment: 'top', seams: { add } });
    const before = patternFrom(proposal, { garment: 'top' }).pattern;
    expect(pattern.seams.length).toBe(before.seams.length);
    expect(pattern.seams.filter((seam) => seam.name === 'Joined by hand').length).toBe(1);
  });

  it('keep their ids where the answer is what was thought, so that what was said of them stands', () => {
    const told = rolesAsTold(proposal, { pieces: { [front.id]: { role: 'front', half: 'front' } } });
    expect(firsts(told)).toEqual(firsts(proposal));
    const ids = told.seams.map((seam) => seam.id);
    expect(new Set(ids).size).toBe(ids.length);
  });
});

// The sample's band begins its long edge with the underlap; drawn mirrored, it ends with it.
describe.each([
  ['as drawn', false],
  ['mirrored', true],
])('the underlap of a waistband %s', (_, mirrored) => {
  const { drawing } = patternSheet(sample('a-line-skirt'), { semantics: false });
  const wide = drawing.pages[0]!.width;
  const skirt = recognise(
    mirrored
      ? {
          ...drawing,
          texts: drawing.texts.map((one) => ({ ...one, at: { ...one.at, x: wide - one.at.x - one.width } })),
          strokes: drawing.strokes.map((one) => ({
            ...one,
            path: one.path.map(({ x, y }) => ({ x: wide - x, y })),
          })),
        }
      : drawing,
  );
  const bandOf = ({ pieces }: typeof skirt) => pieces.find((piece) => piece.role === 'waistband')!;
  const band = bandOf(skirt);
  const [sewn, over] = ['-sewn', '-over'].map((end) => band.edges.find((edge) => edge.id.endsWith(end))!);
  const whole = sewn!.id.replace('-sewn', '');
  const told = (is: typeof skirt, edges: PieceCorrection['edges'] & {}) =>
    bandOf(rolesAsTold(is, { pieces: { [band.id]: { edges } } }));

  it('has an id for each half, and none that means the whole as well', () => {
    expect([sewn!.role, over!.role]).toEqual(['attached', 'opening']);
    expect(over!.id).toBe(`${whole}-over`);
    const [first, second] = mirrored ? [sewn, over] : [over, sewn];
    expect(band.edges[(band.edges.indexOf(first!) + 1) % band.edges.length]).toBe(second);
    expect(over!.lengths.every((long) => long < 60)).toBe(true);
    expect(band.edges.map((edge) => edge.id)).not.toContain(whole);
  });

  it('is cut off again where the edge was answered as a whole: the answer is the sewn half’s', () => {
    const { edges } = told(skirt, { [whole]: { role: 'attached' } });
    expect(edges.find((edge) => edge.id === sewn!.id)).toMatchObject({ role: 'attached', confidence: 1 });
    expect(edges.find((edge) => edge.id === over!.id)).toMatchObject({ role: 'opening' });
    expect(edges.find((edge) => edge.id === over!.id)!.told).toBeUndefined();
  });

  it('is no more where the half that was sewn is said to be sewn to nothing: the answer is the whole edge’s', () => {
    const { edges } = told(skirt, { [sewn!.id]: { role: 'outer' } });
    expect(edges.map((edge) => edge.id)).not.toContain(over!.id);
    expect(edges.find((edge) => edge.id === whole)).toMatchObject({ role: 'outer', confidence: 1 });
  });

  it('takes with it what else was said of the edge, to the half that is sewn', () => {
    const said = { pieces: { [band.id]: { edges: { [whole]: { allowance: 23 } } } } } as const;
    const { pattern } = patternFrom(skirt, { ...said, garment: 'skirt' });
    const edges = pattern.pieces.find((piece) => piece.role === 'waistband')!.edges;
    expect(edges.filter((edge) => edge.allowance === 23).map((edge) => edge.role)).toEqual(['attached']);
  });
});

describe('a piece drawn the other way round', () => {
  it('is turned over by itself: its centre lies at the smaller x, and its seams still meet', () => {
    const { drawing } = patternSheet(TEE, { semantics: false });
    const wide = drawing.pages[0]!.width;
    const turned = recognise({
      ...drawing,
      texts: drawing.texts.map((text) => ({ ...text, at: { ...text.at, x: wide - text.at.x - text.width } })),
      strokes: drawing.strokes.map((stroke) => ({
        ...stroke,
        path: stroke.path.map(({ x, y }) => ({ x: wide - x, y })),
      })),
    });
    const { pattern } = patternFrom(turned, { garment: 'top' });
    for (const piece of pattern.pieces.filter(({ half }) => half === 'front' || half === 'back')) {
      const x = (role: string) => pathStart(piece.edges.find((edge) => edge.role === role)!.path[0]!).x;
      expect(x('centre'), piece.name).toBeLessThan(x('side'));
    }
    expect(pattern.seams.length).toBe(turned.seams.filter((seam) => seam.rank === 1).length);
  });
});
