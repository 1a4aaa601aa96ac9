import type { PieceRole } from '../../../garment/index.ts';
import type { PieceSense } from '../words/piece-word-table.ts';
import type { Heard } from '../words/piece-sense.ts';
import type { Contour, Region } from './contour-table.ts';

/** Words that name a kind of piece, and which roles they may mean; those before the others where a name holds several. */
const NOUNS: readonly (readonly [PieceSense, readonly PieceRole[]])[] = [
  ['flap', ['flap']],
  ['pocket', ['pocket', 'pocket-bag']],
  ['fly', ['fly-shield']],
  ['waistband', ['waistband']],
  ['neckband', ['neckband']],
  ['cuff', ['cuff']],
  ['hem-band', ['hem-band']],
  ['hood', ['hood']],
  ['collar', ['collar', 'collar-stand']],
  ['stand', ['collar-stand', 'collar']],
  ['gusset', ['gusset', 'sleeve-gusset']],
  ['godet', ['godet']],
  ['peplum', ['peplum']],
  ['strap', ['strap']],
  ['tab', ['tab']],
  ['lapel', ['lapel']],
  ['yoke', ['yoke']],
  ['sleeve', ['sleeve', 'upper-sleeve', 'under-sleeve']],
];
const REGIONS: readonly (readonly [PieceSense, Region])[] = [
  ['skirt', 'skirt'],
  ['legs', 'legs'],
  ['trunk', 'trunk'],
];

/** A word that agrees, one that does not, and a name that says nothing of a kind: a sleeve is hardly called a front. */
const AGREES = -2.5;
const DIFFERS = 6;
const UNSAID = 2.5;
const LITTLE = 0.8;

/** What is heard, as sets to ask. */
export interface Words {
  readonly roles: readonly PieceRole[];
  readonly half: 'front' | 'back' | null;
  readonly region: Region | null;
  readonly senses: ReadonlySet<PieceSense>;
  readonly heard: readonly Heard[];
}

/** Gathers what a piece's words say. */
export function wordsOf(heard: readonly Heard[]): Words {
  const senses = new Set(heard.map((one) => one.sense));
  const noun = NOUNS.find(([sense]) => senses.has(sense));
  let roles = noun?.[1] ?? [];
  if (noun?.[0] === 'pocket' && senses.has('bag')) roles = ['pocket-bag'];
  if (noun?.[0] === 'sleeve' && senses.has('upper')) roles = ['upper-sleeve'];
  if (noun?.[0] === 'sleeve' && senses.has('under')) roles = ['under-sleeve'];
  const region = REGIONS.find(([sense]) => senses.has(sense))?.[1] ?? null;
  const [front, back] = [senses.has('front') || senses.has('bib'), senses.has('back')];
  return { roles, half: front === back ? null : front ? 'front' : 'back', region, senses, heard };
}

/** What a piece's words say against a contour, or for it, as a cost. Null: the guess that nothing is known. */
export function wordCost(words: Words, contour: Contour | null): number {
  const { roles, half, region, senses } = words;
  if (senses.size === 0) return 0;
  if (!contour) return roles.length > 0 ? 0 : half ? UNSAID : 0;
  let cost = 0;
  if (roles.length > 0) {
    const place = roles.indexOf(contour.role);
    cost += place < 0 ? DIFFERS : AGREES + LITTLE * place;
  } else if (half && contour.half !== 'front' && contour.half !== 'back') cost += UNSAID;
  if (half && (contour.half === 'front' || contour.half === 'back'))
    cost += contour.half === half ? AGREES : DIFFERS;
  else if (half && roles.length > 0 && contour.half === 'both') cost += LITTLE;
  if (roles.length === 0 && half) {
    const side = contour.role.startsWith('side');
    const panel = contour.slots.some((slot) => slot.role === 'panel');
    if (senses.has('side')) cost += side ? AGREES : UNSAID;
    else cost += side ? UNSAID : 0;
    if (senses.has('centre')) cost += panel && !side ? -LITTLE : LITTLE;
  }
  if (roles.length === 0 && !half && senses.has('side') && contour.role === 'side-panel') cost += AGREES;
  if (region && contour.region !== 'any')
    cost += contour.region === region ? -LITTLE : contour.region === 'arm' ? DIFFERS : UNSAID;
  return cost;
}
