import type { EdgeRef, Seam } from '../../garment/index.ts';

const on = (piece: string, edge: string): EdgeRef => ({ piece, edge });
const back = (piece: string, edge: string): EdgeRef => ({ piece, edge, backwards: true });

/** Seams of the trunk and sleeve; `cloth` is '' for the shell and '-lining' for its lining, whose seams follow and are not moved by themselves. */
function trunkSeams(cloth: '' | '-lining', first: number): Seam[] {
  const id = (name: string): string => `${name}${cloth}`;
  const name = (text: string): string => (cloth ? `${text}, lining` : text);
  const p = (piece: string): string => `${piece}${cloth}`;
  const movable = cloth === '';
  return [
    {
      id: id('princess-front'),
      name: name('Front panel seam'),
      a: [on(p('front-side'), 'princess')],
      b: [back(p('front-centre'), 'princess')],
      join: { kind: 'eased', least: 2, most: 6 },
      order: first,
      movable,
    },
    {
      id: id('princess-back'),
      name: name('Back panel seam'),
      a: [on(p('back-side'), 'princess')],
      b: [back(p('back-centre'), 'princess')],
      join: { kind: 'plain' },
      order: first + 1,
      movable,
    },
    {
      id: id('shoulder'),
      name: name('Shoulder seam'),
      a: [on(p('back-centre'), 'shoulder')],
      b: [on(p('front-centre'), 'shoulder')],
      join: { kind: 'eased', least: 4, most: 12 },
      order: first + 2,
      movable: false,
    },
    {
      id: id('side'),
      name: name('Side seam'),
      a: [on(p('front-side'), 'side')],
      b: [on(p('back-side'), 'side')],
      join: { kind: 'plain' },
      order: first + 3,
      movable,
    },
    {
      id: id('underarm'),
      name: name('Sleeve underarm seam'),
      a: [on(p('sleeve'), 'underarm-back')],
      b: [back(p('sleeve'), 'underarm-front')],
      join: { kind: 'plain' },
      order: first + 4,
      movable,
    },
    {
      id: id('armhole'),
      name: name('Armhole seam'),
      a: [back(p('sleeve'), 'cap-front'), back(p('sleeve'), 'cap-back')],
      b: [
        on(p('front-side'), 'armhole'),
        on(p('front-centre'), 'armhole'),
        back(p('back-centre'), 'armhole'),
        back(p('back-side'), 'armhole'),
      ],
      join: { kind: 'eased', least: 15, most: 30 },
      order: first + 5,
      keep: 'b',
      movable: false,
    },
  ];
}

/** Every seam of the bodice in sewing order: shell, collar, lining, then the neck that joins them. */
export const SEAMS: readonly Seam[] = [
  ...trunkSeams('', 1),
  {
    id: 'neck',
    name: 'Collar to neckline',
    a: [on('collar', 'neck')],
    b: [back('front-centre', 'neck'), on('back-centre', 'neck')],
    join: { kind: 'plain' },
    order: 7,
    keep: 'b',
    movable: false,
  },
  ...trunkSeams('-lining', 8),
  {
    id: 'facing-shoulder',
    name: 'Facing shoulder seam',
    a: [on('back-neck-facing', 'shoulder')],
    b: [on('front-neck-facing', 'shoulder')],
    join: { kind: 'plain' },
    order: 14,
    movable: false,
  },
  {
    id: 'facing-neck',
    name: 'Facing to collar',
    a: [on('collar', 'neck')],
    b: [back('front-neck-facing', 'neck'), on('back-neck-facing', 'neck')],
    join: { kind: 'plain' },
    order: 15,
    keep: 'b',
    movable: false,
  },
];
