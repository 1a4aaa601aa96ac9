import { linePath, pathEnd } from '../../geometry/index.ts';
import type { DrawnPiece, Follower, GarmentLevel, Pattern } from '../../garment/index.ts';
import { finishedRows } from '../finished.ts';
import { nestAll } from '../nest.ts';
import { womenRows, womenSizes } from '../women-chart.ts';
import { WOMEN, WOMEN_SOURCE } from '../women-table.ts';
import type { WomanBody } from '../women-table.ts';
import { backCentre, backSide, facing, frontCentre, frontSide } from './body-pieces.ts';
import { collarPiece } from './collar.ts';
import { bodiceRules } from './rules.ts';
import { sleeveLines, sleevePiece } from './sleeve.ts';
import { trunk } from './trunk.ts';
import { SEAMS } from './seams.ts';

/** The whole garment in one size: six shell pieces, two facings, five lining pieces. */
function draftBodice(body: WomanBody): readonly DrawnPiece[] {
  const r = bodiceRules(body);
  const t = trunk(r);
  const arm = sleeveLines(body, t);
  const shell = (number: number) => ({ number, lining: false });
  const lining = (number: number) => ({ number, lining: true });
  return [
    frontCentre(t, r, shell(1)),
    frontSide(t, r, shell(2)),
    backSide(t, r, shell(3)),
    backCentre(t, r, shell(4)),
    sleevePiece(arm, { id: 'sleeve', name: 'Sleeve', ...shell(5) }),
    collarPiece(t),
    facing(
      {
        shoulder: t.frontShoulder,
        neck: t.frontNeck,
        centre: linePath(pathEnd(t.frontNeck), { x: 0, y: -r.skirtLength }),
      },
      { id: 'front-neck-facing', name: 'Front neck facing', half: 'front', number: 7, kind: 'fold' },
    ),
    facing(
      { shoulder: t.backShoulder, neck: t.backNeck, centre: t.centreBack },
      { id: 'back-neck-facing', name: 'Back neck facing', half: 'back', number: 8, kind: 'opening' },
    ),
    frontCentre(t, r, lining(9)),
    frontSide(t, r, lining(10)),
    backSide(t, r, lining(11)),
    backCentre(t, r, lining(12)),
    sleevePiece(arm, { id: 'sleeve-lining', name: 'Sleeve, lining', ...lining(13) }),
  ];
}

const TRUNK = ['front-centre', 'front-side', 'back-side', 'back-centre'];
const LEVELS: readonly GarmentLevel[] = [
  { level: 'bust', pieces: TRUNK },
  { level: 'waist', pieces: TRUNK },
  { level: 'high-hip', pieces: TRUNK },
  { level: 'upper-arm', pieces: ['sleeve'] },
  { level: 'wrist', pieces: ['sleeve'] },
];

const repeat = (parent: string, edges: readonly string[]): Follower => ({
  piece: `${parent}-lining`,
  parent,
  role: 'lining',
  edges: [...edges.map((e) => ({ own: e, parent: e })), { own: 'hem', parent: 'hem', apart: true }],
});
const neckFacing = (piece: string, parent: string, centre: string): Follower => ({
  piece,
  parent,
  role: 'facing',
  edges: [
    { own: 'neck', parent: 'neck' },
    { own: 'shoulder', parent: 'shoulder' },
    { own: 'centre', parent: centre },
    { own: 'outer', parent: 'neck', apart: true },
  ],
});

const FOLLOWERS: readonly Follower[] = [
  neckFacing('front-neck-facing', 'front-centre', 'centre-front'),
  neckFacing('back-neck-facing', 'back-centre', 'centre-back'),
  repeat('front-centre', ['princess', 'armhole', 'shoulder', 'neck', 'centre-front']),
  repeat('front-side', ['side', 'armhole', 'princess']),
  repeat('back-side', ['side', 'armhole', 'princess']),
  repeat('back-centre', ['princess', 'armhole', 'shoulder', 'neck', 'centre-back']),
  repeat('sleeve', ['underarm-back', 'cap-back', 'cap-front', 'underarm-front']),
];

/** The lined, panelled stage bodice in ten sizes. */
export function stageBodice(): Pattern {
  const sizes = WOMEN.map(draftBodice);
  const rules = WOMEN.map(bodiceRules);
  return {
    format: 'pintrue-pattern',
    version: 2,
    id: 'stage-bodice',
    name: 'Stage bodice',
    about:
      'A lined bodice to the high hip in eight panels, with a stand collar, set-in sleeves and a centre back that opens from neck to hem. ' +
      'The panel seams start in the armhole and pass 12 mm to the side of the bust point. The neck facings are stitched on to the full lining.',
    garment: 'bodice',
    wearer: 'woman',
    cloth: { kind: 'woven' },
    chart: {
      sizes: womenSizes(WOMEN),
      waist: 'natural',
      body: womenRows(WOMEN, [
        'stature',
        'neck-base-girth',
        'upper-bust-girth',
        'bust-girth',
        'under-bust-girth',
        'waist-girth',
        'high-hip-girth',
        'hip-girth',
        'upper-arm-girth',
        'wrist-girth',
        'back-waist-length',
        'front-waist-length',
        'shoulder-length',
        'across-back',
        'across-front',
        'bust-height',
        'bust-spread',
        'scye-depth',
        'high-hip-depth',
        'hip-depth',
        'arm-length',
      ]),
      finished: finishedRows(sizes, LEVELS),
      finishedLengths: {
        'back-waist-length': rules.map((r) => r.nape),
        'front-waist-length': rules.map((r) => r.frontNeckSide),
      },
      source: WOMEN_SOURCE,
    },
    pieces: nestAll(sizes),
    seams: SEAMS,
    followers: FOLLOWERS,
    bands: [],
    levels: LEVELS,
    endsAt: 'high-hip',
    cautions: [],
  };
}
