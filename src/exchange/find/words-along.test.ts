// Invented: a sample's drawing without any words but those set along one edge. The words of nine languages are from memory, common practice.
import { describe, expect, it } from 'vitest';
import { renderPhrase, TELL_CM } from '../../garment/index.ts';
import { pathAt, placeAtShare, placeTangent } from '../../geometry/index.ts';
import { sample } from '../../samples/index.ts';
import type { DrawnText } from '../drawing/drawing.ts';
import { patternSheet } from '../write/sheet.ts';
import type { ProposedEdge } from './proposal.ts';
import { inDoubt } from './doubt.ts';
import { recognise } from './recognise.ts';
import { withWordsAlong } from './words-along.ts';

const { drawing } = patternSheet(sample('a-line-skirt'), { semantics: false });
const bare = { ...drawing, texts: [] };
const found = recognise(bare);
const front = found.pieces.find((piece) => piece.role === 'front')!;
const side = front.edges.find((edge) => edge.role === 'side')!;

/** Words set along an edge's middle, so far inside the piece, turned by so much against it. */
function along(edge: ProposedEdge, text: string, inside = 4, turned = 0): DrawnText {
  const path = edge.paths[Math.floor(edge.paths.length / 2)]!;
  const middle = pathAt(path, 0.5);
  const way = placeTangent(path, placeAtShare(path, 0.5));
  const angle = Math.atan2(way.y, way.x);
  const [x, y] = [middle.x - Math.sin(angle) * inside, middle.y + Math.cos(angle) * inside];
  const width = 20;
  return {
    text,
    at: { x: x - (Math.cos(angle + turned) * width) / 2, y: y - (Math.sin(angle + turned) * width) / 2 },
    size: 3,
    width,
    angle: angle + turned,
    ...rest,
  };
}
const { text: _t, at: _a, size: _s, width: _w, angle: _g, belongs: _b, ...rest } = drawing.texts[0]!;

const rolesAlong = (text: DrawnText, name = 'Front') =>
  withWordsAlong(front.edges, [text], name).find((edge) => edge.id === side.id)!.along?.roles;

describe('words along an edge', () => {
  it.each([
    'Side seam',
    'Seitennaht',
    'couture côté',
    'costura lateral',
    'cucitura fianco',
    'zijnaad',
    'costura do lado',
    'sidsöm',
    'szew boczny',
  ])('“%s” name a side', (words) => expect(rolesAlong(along(side, words))).toEqual(['side', 'outseam']));

  it.each([
    'centre front',
    'Vordere Mitte',
    'milieu devant',
    'centro delantero',
    'centro davanti',
    'midden voor',
    'meio da frente',
    'mitt fram',
    'środek przodu',
  ])('“%s” name a centre', (words) => expect(rolesAlong(along(side, words))).toEqual(['centre', 'opening']));

  it.each([
    'place on fold',
    'Stoffbruch',
    'au pli',
    'al doblez',
    'sulla piega',
    'aan de stofvouw',
    'na dobra',
    'mot tygvikning',
    'na zgięciu',
  ])('“%s” name a centre on the fold', (words) => expect(rolesAlong(along(side, words))).toEqual(['centre']));

  it('say nothing across it, far from it, as the name of the piece or with how many to cut', () => {
    expect(rolesAlong(along(side, 'side seam', 4, 1.2))).toBeUndefined();
    expect(rolesAlong(along(side, 'side seam', 40))).toBeUndefined();
    expect(rolesAlong(along(side, 'centre front'), 'centre front panel')).toBeUndefined();
    expect(rolesAlong(along(side, 'cut 1 on fold'))).toBeUndefined();
    expect(rolesAlong(along(side, 'side'))).toBeUndefined();
  });

  /** An edge of the front, read with such words along it. */
  const withWords = (edge: ProposedEdge, words: string): ProposedEdge =>
    recognise({ ...bare, texts: [along(edge, words)] })
      .pieces.find((piece) => piece.id === front.id)!
      .edges.find((one) => one.id === edge.id)!;

  it('settle what was in doubt, and are said to be why', () => {
    expect(inDoubt(side)).toBe(true);
    const named = withWords(side, 'Side seam');
    expect(named.role).toBe('side');
    expect(inDoubt(named)).toBe(false);
    expect(renderPhrase(named.because!, TELL_CM)).toContain('“Side seam” is written along it');
  });

  it('make doubtful, or another, what they name otherwise', () => {
    const centre = front.edges.find((edge) => edge.role === 'centre')!;
    const named = withWords(centre, 'side seam');
    expect(named.role === 'centre' ? named.confidence! : 0).toBeLessThan(centre.confidence! - 0.2);
  });
});
