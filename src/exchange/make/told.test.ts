// The knit tee drawn without semantics and without words; what it truly is, its sample says.
import { t } from '../../garment/index.ts';
import { describe, expect, it } from 'vitest';
import { pathStart } from '../../geometry/index.ts';
import { sample } from '../../samples/index.ts';
import { recognise } from '../find/recognise.ts';
import { patternSheet } from '../write/sheet.ts';
import { patternFrom } from './pattern.ts';
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
