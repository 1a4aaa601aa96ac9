/**
 * What a piece, an edge, a notch or a mark IS to the garment, in the trade's own words. Names are free text and say nothing to the
 * program; roles do. Where no role is known it is absent, and whatever needs it says which edge it asks about and does nothing to it.
 */

/** What a piece is. A facing or lining has the role and half of what it follows; that it is one, its `Follower` says. */
export const PIECE_ROLES = [
  'front',
  'back',
  'side-front',
  'side-back',
  'side-panel',
  'yoke',
  'sleeve',
  'upper-sleeve',
  'under-sleeve',
  'sleeve-gusset',
  'collar',
  'collar-stand',
  'lapel',
  'cuff',
  'waistband',
  'hem-band',
  'neckband',
  'facing',
  'lining',
  'pocket',
  'pocket-bag',
  'flap',
  'fly-shield',
  'hood',
  'peplum',
  'godet',
  'strap',
  'tab',
  'gusset',
  'other',
] as const;
export type PieceRole = (typeof PIECE_ROLES)[number];

/** Where on the body a piece is worn: `both` goes round front and back, `arm` round an arm, `none` is on no half (a pocket bag). */
export const PIECE_HALVES = ['front', 'back', 'both', 'arm', 'none'] as const;
export type PieceHalf = (typeof PIECE_HALVES)[number];

/** Front or back of the body: of an edge or notch of a piece that goes round (a sleeve's front cap, a waistband's back). */
export const HALVES = ['front', 'back'] as const;
export type Half = (typeof HALVES)[number];

/**
 * What an edge is. `rise`: the crotch seam of trousers. `outseam`: the side seam of a leg, a `side` to whatever asks for sides.
 * On bands, collars and cuffs: `attached` to the garment, `outer` the free long edge, `end` the short ones.
 * `free-outer`: an edge left, faced or bound for itself (a wrap's front, a peplum's).
 */
export const EDGE_ROLES = [
  'centre',
  'side',
  'shoulder',
  'armhole',
  'neck',
  'waist',
  'hem',
  'panel',
  'yoke',
  'cap',
  'underarm',
  'wrist',
  'inseam',
  'outseam',
  'rise',
  'opening',
  'placket',
  'free-outer',
  'attached',
  'outer',
  'end',
] as const;
export type EdgeRole = (typeof EDGE_ROLES)[number];

/** What a notch or a mark is for, beside the trade's counting (one front, two back, three centre back). */
export const SIGN_ROLES = [
  'shoulder-point',
  'front-balance',
  'back-balance',
  'bust-level',
  'waist',
  'hip',
  'side',
  'zip-end',
  'pivot',
  'pocket',
  'fold-line',
  'button',
] as const;
export type SignRole = (typeof SIGN_ROLES)[number];
