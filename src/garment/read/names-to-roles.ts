import type { EdgeRole, Half, PieceHalf, PieceRole, SignRole } from '../role-table.ts';

/**
 * Version 1 of the documents kept what a piece, an edge or a notch is in its English name. Here, and nowhere else but where drawings are read,
 * the names are read once, by the patterns which that version used, and written down as roles.
 */

type Raw = Readonly<Record<string, unknown>>;

const isRecord = (value: unknown): value is Raw =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
const list = (value: unknown): readonly unknown[] => (Array.isArray(value) ? value : []);
const records = (value: unknown): readonly Raw[] => list(value).filter(isRecord);
const wordsOf = (of: Raw, ...keys: readonly string[]): string =>
  keys
    .map((key) => of[key])
    .filter((v) => typeof v === 'string')
    .join('; ')
    .toLowerCase();

const firstOf = <R>(table: readonly (readonly [R, RegExp])[], text: string): R | undefined =>
  table.find(([, words]) => words.test(text))?.[0];

/** In this order: the more particular word first (`panel seam, shoulder` is a panel seam; `sleeve head` is no hem). */
const EDGE_WORDS: readonly (readonly [EdgeRole, RegExp])[] = [
  ['panel', /panel|princess/],
  ['cap', /\bcap\b|cap-|crown|sleeve head/],
  ['underarm', /under ?-?arm/],
  ['armhole', /arm ?-?hole|arm ?scye|\bscye/],
  ['shoulder', /shoulder/],
  ['rise', /crotch|crutch|\brise\b|\bfork\b|seat seam/],
  ['inseam', /in-?seam|inside leg|inner leg|inleg/],
  ['neck', /neck/],
  ['hem', /\bhem|bottom/],
  ['waist', /waist/],
  ['centre', /cent(?:re|er)|^c[fb]$/],
  ['side', /\bside|out-?seam|outside leg|outer leg/],
  ['yoke', /\byoke/],
  ['free-outer', /free edge/],
];

/** On bands and collars the words of the seam they are sewn into name the edge that is attached. */
const BAND_WORDS: readonly (readonly [EdgeRole, RegExp])[] = [
  ['end', /\bend\b|cent(?:re|er)/],
  ['opening', /\bunderlap/],
  ['outer', /inner|outer|upper|\btop\b|free/],
];

const PIECE_WORDS: readonly (readonly [PieceRole, RegExp])[] = [
  ['fly-shield', /fly[ -]?(?:shield|guard)/],
  ['pocket-bag', /pocket[ -]?bag/],
  ['flap', /\bflap/],
  ['pocket', /pocket/],
  ['collar-stand', /collar[ -]stand/],
  ['collar', /collar/],
  ['lapel', /lapel/],
  ['cuff', /cuff/],
  ['waistband', /waist[ -]?band/],
  ['neckband', /neck[ -]?band/],
  ['hem-band', /hem[ -]?band/],
  ['sleeve-gusset', /sleeve[ -]gusset/],
  ['under-sleeve', /under[ -]?sleeve/],
  ['upper-sleeve', /(?:upper|top)[ -]?sleeve/],
  ['sleeve', /sleeve/],
  ['yoke', /yoke/],
  ['hood', /\bhood/],
  ['peplum', /peplum/],
  ['godet', /godet/],
  ['gusset', /gusset/],
  ['strap', /\bstrap/],
  ['tab', /\btab\b/],
  ['side-front', /side.*front|front.*side/],
  ['side-back', /side.*back|back.*side/],
  ['side-panel', /\bside\b/],
  ['front', /front|\bcf\b/],
  ['back', /back|\bcb\b/],
  ['facing', /facing/],
  ['lining', /lining/],
];

const ROUND: readonly (PieceRole | undefined)[] = [
  'collar',
  'collar-stand',
  'cuff',
  'waistband',
  'neckband',
  'hem-band',
];
const POCKETS: readonly (PieceRole | undefined)[] = ['pocket', 'pocket-bag', 'flap'];

/** The lines a trial speaks of, by the words they were typed with; the more particular first. */
const LINE_WORDS: readonly (readonly [string, RegExp])[] = [
  ['sleeve-hem', /sleeve (hem|end)|wrist/],
  ['upper-arm', /upper arm|biceps|sleeve/],
  ['shoulder', /shoulder/],
  ['neckline', /neck/],
  ['armhole', /arm ?hole|scye/],
  ['bust', /bust/],
  ['crotch', /crotch|rise/],
  ['seat', /seat/],
  ['abdomen', /abdomen|stomach|belly|tummy/],
  ['side', /side seam|^side/],
  ['upper-back', /upper back|blade|across the back|back width/],
  ['chest', /chest/],
  ['hem', /hem/],
  ['hip', /hip/],
  ['waist', /waist/],
];

/** The line a trial's words speak of; the words as they are where they speak of none. */
export function lineOfWords(words: string): string {
  return firstOf(LINE_WORDS, words.toLowerCase()) ?? words;
}

/** Front or back where the words say one of them and not the other. */
function halfOfWords(text: string): Half | undefined {
  const front = /front|\bcf\b/.test(text);
  const back = /back|\bcb\b/.test(text);
  return front === back ? undefined : front ? 'front' : 'back';
}

/** By the trade's notches: one in front, two behind. */
function halfOfNotches(piece: Raw): Half | undefined {
  const counts = records(piece['edges']).flatMap((e) => records(e['notches']).map((n) => n['count']));
  return counts.includes(1) === counts.includes(2) ? undefined : counts.includes(1) ? 'front' : 'back';
}

function edgeRole(edge: Raw, of: PieceRole | undefined, legs: boolean): EdgeRole | undefined {
  const kind = edge['kind'];
  if (kind === 'dart') return undefined;
  const [name, id] = [wordsOf(edge, 'name'), wordsOf(edge, 'id')];
  if (ROUND.includes(of)) {
    if (kind === 'fold') return 'centre';
    const own = firstOf(BAND_WORDS, name) ?? firstOf(BAND_WORDS, id);
    return own ?? (kind === 'seam' ? 'attached' : undefined);
  }
  const role = firstOf(EDGE_WORDS, name) ?? firstOf(EDGE_WORDS, id);
  if (role !== undefined) return role === 'side' && legs ? 'outseam' : role;
  if (POCKETS.includes(of))
    return of === 'pocket-bag' ? 'outer' : /opening/.test(name) ? 'opening' : 'attached';
  return kind === 'fold' ? 'centre' : kind === 'hem' ? 'hem' : undefined;
}

function notchRole(notch: Raw, edge: EdgeRole | undefined, of: PieceHalf | undefined): SignRole | undefined {
  const id = wordsOf(notch, 'id');
  if (edge !== 'shoulder' && /shoulder/.test(id)) return 'shoulder-point';
  if (/zip|opening/.test(id)) return 'zip-end';
  if (of === 'both' && id.startsWith('side')) return 'side';
  if (edge !== 'cap' && edge !== 'armhole') return undefined;
  return /front/.test(id) ? 'front-balance' : /back/.test(id) ? 'back-balance' : undefined;
}

/** With a role where there is one and none is said yet. */
const withRole = (of: Raw, said: Readonly<Record<string, string | undefined>>): Raw => ({
  ...Object.fromEntries(Object.entries(said).filter(([, v]) => v !== undefined)),
  ...of,
});

/** The edges of a pattern's neck seams that have a band: in version 1 the seam's id said what they are. */
function neckEdges(pattern: Raw): ReadonlySet<string> {
  const bands = records(pattern['bands']);
  const seams = records(pattern['seams']).filter(
    (s) => /neck/.test(wordsOf(s, 'id')) && bands.some((b) => b['seam'] === s['id']),
  );
  const worn = new Set(bands.map((b) => b['piece']));
  const refs = seams.flatMap((s) => [...records(s['a']), ...records(s['b'])]);
  return new Set(refs.filter((r) => !worn.has(r['piece'])).map((r) => `${r['piece']} ${r['edge']}`));
}

interface Is {
  readonly role: PieceRole | undefined;
  readonly half: PieceHalf | undefined;
}

/** What a piece is by itself; a follower has its parent's role and half. */
function isOf(piece: Raw, parents: ReadonlyMap<unknown, Raw>, depth = 0): Is {
  const words = wordsOf(piece, 'id', 'name');
  const own = firstOf(PIECE_WORDS, words);
  if (POCKETS.includes(own)) return { role: own, half: halfOfWords(words) ?? 'none' };
  const parent = parents.get(piece['id']);
  const led = parent && depth < 5 ? isOf(parent, parents, depth + 1) : undefined;
  const cap = records(piece['edges']).some((e) => edgeRole(e, undefined, false) === 'cap');
  const role = own === 'fly-shield' ? own : (led?.role ?? own ?? (cap ? 'sleeve' : undefined));
  const half =
    halfOfWords(words) ??
    led?.half ??
    (ROUND.includes(role) ? 'both' : cap || role === 'sleeve' ? 'arm' : halfOfNotches(piece));
  return { role, half };
}

function withRoles(piece: Raw, { role, half }: Is, necks: ReadonlySet<string>): Raw {
  const edges = list(piece['edges']);
  const legs = edges.some((e) => isRecord(e) && edgeRole(e, role, false) === 'inseam');
  return {
    ...withRole(piece, { role, half }),
    edges: edges.map((edge) => {
      if (!isRecord(edge)) return edge;
      const neck = necks.has(`${piece['id']} ${edge['id']}`) ? 'neck' : undefined;
      const own = edgeRole(edge, role, legs) ?? neck;
      const words = wordsOf(edge, 'id', 'name');
      const round = half !== 'front' && half !== 'back' && edge['kind'] !== 'dart';
      const said = withRole(edge, { role: own, half: round ? halfOfWords(words) : undefined });
      return Array.isArray(edge['notches'])
        ? {
            ...said,
            notches: edge['notches'].map((n: unknown) =>
              isRecord(n) ? withRole(n, { role: notchRole(n, own, half) }) : n,
            ),
          }
        : said;
    }),
  };
}

/**
 * A pattern (its parsed value, not checked yet) with the roles that its names say, where none are said already: of version 1, or made from a drawing
 * with the words of its maker.
 */
export function namesToRoles(pattern: Raw): Raw {
  if (!Array.isArray(pattern['pieces'])) return pattern;
  const pieces = records(pattern['pieces']);
  const parents = new Map(
    records(pattern['followers']).flatMap((f): [unknown, Raw][] => {
      const parent = pieces.find((p) => p['id'] === f['parent']);
      return parent ? [[f['piece'], parent]] : [];
    }),
  );
  const necks = neckEdges(pattern);
  return {
    ...pattern,
    pieces: pattern['pieces'].map((piece: unknown) =>
      isRecord(piece) && Array.isArray(piece['edges'])
        ? withRoles(piece, isOf(piece, parents), necks)
        : piece,
    ),
  };
}
