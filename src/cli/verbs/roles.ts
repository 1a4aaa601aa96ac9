import { checkRoles } from '../../check/index.ts';
import { answersFrom, asTaken, putEdge, putPiece } from '../../desk/index.ts';
import {
  called,
  EDGE_NAMES,
  EDGE_ROLES,
  HALF_NAMES,
  HALVES,
  nearestWord,
  PIECE_HALVES,
  PIECE_NAMES,
  PIECE_ROLES,
  pieceAt,
  renderPhrase,
  t,
  word,
  writeFitting,
  writePattern,
  type Pattern,
  type Phrase,
  type Tell,
} from '../../garment/index.ts';
import type { Io } from '../io.ts';
import { loadEither, loadPattern } from '../load.ts';
import { textOption } from '../option.ts';
import { wroteWords } from '../step-words.ts';
import { UsageError, type Answer, type Verb } from '../verb.ts';
import { table } from '../words.ts';

/** One of the words of a list. @throws UsageError with the nearest one */
function oneOf<const T extends string>(
  given: string,
  words: readonly T[],
  what: 'piece' | 'edge' | 'piece-half' | 'half',
): T {
  const found = words.find((one) => one === given);
  if (found !== undefined) return found;
  throw new UsageError('role-unknown', { given, what, near: nearestWord(given, words), known: words });
}

/** `PIECE=ROLE`, `PIECE/EDGE=ROLE`, with `:HALF` after the role where wanted, or `=right` for what it was taken for. */
function saying(pattern: Pattern, given: string): Pattern {
  const [, id = '', edge, role = '', half] = /^([^/=]+)(?:\/([^=]+))?=([^:]+)(?::(.+))?$/.exec(given) ?? [];
  if (role === '') throw new UsageError('role-form', { given });
  const piece = pieceAt(pattern, id);
  if (piece === undefined)
    throw new UsageError('piece-unknown', { piece: id, known: pattern.pieces.map((one) => one.id) });
  const at = edge === undefined ? piece : piece.edges.find((one) => one.id === edge);
  if (at === undefined)
    throw new UsageError('edge-unknown', { piece: id, edge: edge!, known: piece.edges.map((one) => one.id) });
  if (role === 'right') {
    if (at.role === undefined) throw new UsageError('role-not-known', { given });
    return asTaken(pattern, { piece: id, ...(edge === undefined ? {} : { edge }) });
  }
  if (edge === undefined)
    return putPiece(pattern, id, {
      role: oneOf(role, PIECE_ROLES, 'piece'),
      ...(half === undefined ? {} : { half: oneOf(half, PIECE_HALVES, 'piece-half') }),
    });
  return putEdge(pattern, id, edge, {
    role: oneOf(role, EDGE_ROLES, 'edge'),
    ...(half === undefined ? {} : { half: oneOf(half, HALVES, 'half') }),
  });
}

const HEAD = [t`place`, t`its name`, t`what it is`, t`worn`, t``];
const DOUBT = t`in doubt`;
const UNKNOWN = t`not known`;
const NOTHING = t``;

/** Every piece and its edges, a line each. */
function rows({ pieces }: Pattern): Phrase[][] {
  const worn = (half: keyof typeof HALF_NAMES | undefined): Phrase =>
    half === undefined ? NOTHING : t`${word('half', half, HALF_NAMES[half])}`;
  return pieces.flatMap((piece) => [
    [
      t`${called(piece.id)}`,
      t`${called(piece.name)}`,
      piece.role === undefined ? UNKNOWN : t`${word('piece', piece.role, PIECE_NAMES[piece.role])}`,
      worn(piece.half),
      piece.unsure ? DOUBT : NOTHING,
    ],
    ...piece.edges.map((edge) => [
      t`${called(`${piece.id}/${edge.id}`)}`,
      t`${called(edge.name)}`,
      edge.role === undefined ? UNKNOWN : t`${word('edge', edge.role, EDGE_NAMES[edge.role])}`,
      worn(edge.half),
      edge.unsure ? DOUBT : NOTHING,
    ]),
  ]);
}

/** The words a piece and an edge are said with. */
function list(): Answer {
  const names = (of: string, all: Readonly<Record<string, string>>) => (tell: Tell) =>
    Object.entries(all).map(([id, name]) => [id, renderPhrase(t`${word(of, id, name)}`, tell)]);
  const [pieces, edges, halves] = [
    names('piece', PIECE_NAMES),
    names('edge', EDGE_NAMES),
    names('half', HALF_NAMES),
  ];
  const text = (tell: Tell): string =>
    [
      table([renderPhrase(t`PIECE=ROLE`, tell), ''], pieces(tell)),
      table([renderPhrase(t`PIECE/EDGE=ROLE`, tell), ''], edges(tell)),
      table([renderPhrase(t`then, where it is worn: ${called(':HALF')}`, tell), ''], halves(tell)),
      renderPhrase(t`${called('right')} instead of a role: it is as it was taken.`, tell),
    ].join('\n\n');
  return { json: { pieces: PIECE_ROLES, edges: EDGE_ROLES, halves: PIECE_HALVES }, text, findings: [] };
}

/** The pattern as it stands by itself now. @throws UsageError where it is another one */
async function samePattern(io: Io, file: string, copy: Pattern): Promise<Pattern> {
  const pattern = await loadPattern(io, file);
  if (pattern.id !== copy.id)
    throw new UsageError('other-pattern', { file, pattern: pattern.name, own: copy.name });
  return pattern;
}

export const roles: Verb = {
  name: 'roles',
  usage: [
    'roles',
    'roles FITTING.json|PATTERN.json',
    'roles FITTING.json|PATTERN.json PIECE=ROLE PIECE/EDGE=ROLE … [--out FILE.json]',
    'roles FITTING.json --from PATTERN.json [--out FITTING.json]',
  ],
  about: t`what the pieces and edges are, what is in doubt of it, and to say it`,
  options: { out: { type: 'string' }, from: { type: 'string' } },
  explain: {
    out: t`the document to write (may be the same file); without it the change is only shown`,
    from: t`the pattern that the fitting was begun with: what was said there since is taken over`,
  },
  run: async ({ words, options, io }) => {
    const [file, ...said] = words;
    if (file === undefined) return list();
    const document = await loadEither(io, file);
    const [out, from] = [textOption(options, 'out'), textOption(options, 'from')];
    if (out !== undefined && said.length === 0 && from === undefined) throw new UsageError('nothing-said');
    const before = document.kind === 'fitting' ? document.fitting.pattern : document.pattern;
    const given = from === undefined ? before : answersFrom(before, await samePattern(io, from, before));
    const pattern = said.reduce(saying, given);
    if (out !== undefined)
      await io.writeFile(
        out,
        document.kind === 'fitting'
          ? writeFitting({ ...document.fitting, on: io.today(), pattern })
          : writePattern(pattern),
      );
    const findings = checkRoles(pattern.pieces);
    const text = (tell: Tell): string => {
      const say = (phrase: Phrase): string => renderPhrase(phrase, tell);
      return [
        table(
          HEAD.map(say),
          rows(pattern).map((row) => row.map(say)),
        ),
        ...(out === undefined ? [] : [say(wroteWords(out))]),
      ].join('\n');
    };
    return {
      json: {
        id: pattern.id,
        name: pattern.name,
        pieces: pattern.pieces.map(({ id, name, role, half, unsure, edges }) => ({
          id,
          name,
          role,
          half,
          unsure,
          edges: edges.map((e) => ({ id: e.id, name: e.name, role: e.role, half: e.half, unsure: e.unsure })),
        })),
        findings,
        ...(out === undefined ? {} : { wrote: out }),
      },
      text,
      findings,
    };
  },
};
