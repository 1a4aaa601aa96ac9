import { pieceAt } from '../../garment/index.ts';
import type {
  EdgeRef,
  Finding,
  Follower,
  InnerLine,
  Level,
  LevelReason,
  NestedPiece,
  Seam,
} from '../../garment/index.ts';
import { linePath } from '../../geometry/index.ts';
import { fromShoulder, isTrunk, ownPlaces, placeAt, underYoke, waisted, yokeSide } from './level-place.ts';
import type { AboutWearer, LevelPlace } from './level-place.ts';
import { anyRole, belowTop, fromTop } from './level-run.ts';
import { exchangeFinding } from '../words/words-table.ts';
import { hasLevels } from './level.ts';

/** A level line that was added to a piece, and why. */
interface ProposedLevel extends LevelPlace {
  readonly piece: string;
}

interface Drawn extends AboutWearer {
  readonly pieces: readonly NestedPiece[];
  readonly seams: readonly Seam[];
  readonly followers: readonly Follower[];
}

/** Seams in which a level goes on from piece to piece. */
const CARRIES = ['side', 'panel', 'centre', 'inseam', 'rise'] as const;

/**
 * Level lines for the upright pieces on which nobody drew any, from what pieces and edges are and from their shape; the pieces with them and what was added.
 * Where a piece does not show a level by itself, it is taken as far along the seam as on the piece it is sewn to; what repeats a piece has its levels.
 */
export function proposeLevels(drawn: Drawn): {
  readonly pieces: readonly NestedPiece[];
  readonly proposed: readonly ProposedLevel[];
} {
  const { pieces, seams, followers } = drawn;
  const follows = new Set(followers.map((one) => one.piece));
  const open = pieces.filter(
    (piece) => !hasLevels(piece) && piece.cloth === 'shell' && !follows.has(piece.id),
  );
  const places = new Map(open.map((piece) => [piece.id, ownPlaces(piece, drawn)]));
  const add = (id: string, more: readonly LevelPlace[]): void => {
    const own = places.get(id)!;
    places.set(id, [...own, ...more.filter((one) => own.every(({ level }) => level !== one.level))]);
  };
  // The piece that is waisted most says where the waist is; the others have it at the same place of the seam.
  const byShape = open
    .filter((piece) => isTrunk(piece))
    .flatMap((piece) => {
      const at = waisted(piece);
      return at ? [{ piece, at }] : [];
    })
    .toSorted((a, b) => b.at.by - a.at.by);
  for (const { piece, at } of byShape) {
    if (places.get(piece.id)!.some(({ level }) => level === 'waist')) continue;
    add(piece.id, fromShoulder(piece, at, drawn));
    carryOn(open, seams, places, add);
  }
  for (const [yoke, below] of joined(open, seams)) {
    const side = yokeSide(yoke);
    if (side) add(below.id, underYoke(below, side, drawn));
  }
  carryOn(open, seams, places, add);
  for (const { piece, parent } of followers) {
    const own = pieceAt({ pieces }, piece);
    if (!own || hasLevels(own)) continue;
    places.set(piece, asParent(own, places.get(parent) ?? []));
  }
  const proposed = [...places].flatMap(([piece, own]) => own.map((one) => ({ piece, ...one })));
  return {
    pieces: pieces.map((piece) => {
      const own = places.get(piece.id) ?? [];
      return own.length === 0 ? piece : { ...piece, lines: [...piece.lines, ...own.map(asLine(piece))] };
    }),
    proposed,
  };
}

const asLine =
  (piece: NestedPiece) =>
  ({ level, reason, ends }: LevelPlace): InnerLine<'nest'> => ({
    id: freeId(piece, level),
    kind: 'level',
    level,
    proposed: reason,
    path: ends.map(([left, right]) => linePath(left, right)),
  });

/** A level line drawn across a piece at a height for each size; null where it would miss the piece in one of them. */
export function levelLine(
  piece: NestedPiece,
  level: Level,
  heights: readonly number[],
): InnerLine<'nest'> | null {
  const place = placeAt(piece, level, 'waist-edge', heights);
  if (!place) return null;
  const { proposed: _drawn, ...line } = asLine(piece)(place);
  return line;
}

/** An id that no line of the piece has. */
function freeId({ lines }: NestedPiece, level: Level): string {
  const taken = new Set(lines.map((line) => line.id));
  let id = `level-${level}`;
  for (let i = 2; taken.has(id); i++) id = `level-${level}-${i}`;
  return id;
}

type Places = ReadonlyMap<string, readonly LevelPlace[]>;

/** Pieces that are sewn to one another, each pair both ways. */
const joined = (
  pieces: readonly NestedPiece[],
  seams: readonly Seam[],
): (readonly [NestedPiece, NestedPiece])[] =>
  seams.flatMap(({ a, b }) =>
    a.flatMap((one) =>
      b.flatMap((other) => {
        const [p, q] = [pieceAt({ pieces }, one.piece), pieceAt({ pieces }, other.piece)];
        return !p || !q || p === q ? [] : [[p, q] as const, [q, p] as const];
      }),
    ),
  );

/** Carries levels over the seams to pieces that do not show them, as far as seams go. */
function carryOn(
  open: readonly NestedPiece[],
  seams: readonly Seam[],
  places: Places,
  add: (piece: string, more: readonly LevelPlace[]) => void,
): void {
  const pairs = seams.flatMap(({ a, b }) =>
    a.length === 1 && b.length === 1
      ? [
          [a[0]!, b[0]!],
          [b[0]!, a[0]!],
        ]
      : [],
  ) as (readonly [EdgeRef, EdgeRef])[];
  for (let more = true; more;) {
    more = false;
    for (const [from, to] of pairs) {
      const [source, target] = [pieceAt({ pieces: open }, from.piece), pieceAt({ pieces: open }, to.piece)];
      if (!source || !target || source === target || !isTrunk(target)) continue;
      const known = new Set(places.get(target.id)!.map(({ level }) => level));
      const carried = places.get(source.id)!.flatMap((place) => {
        if (known.has(place.level)) return [];
        const one = overSeam([source, from], [target, to], place);
        return one ? [one] : [];
      });
      if (carried.length === 0) continue;
      add(target.id, carried);
      more = true;
    }
  }
}

/** The same level as far down the other piece's edge. */
function overSeam(
  [source, from]: readonly [NestedPiece, EdgeRef],
  [target, to]: readonly [NestedPiece, EdgeRef],
  { level, ends, below }: LevelPlace,
): LevelPlace | null {
  const own = source.edges.find((edge) => edge.id === from.edge);
  const other = target.edges.find((edge) => edge.id === to.edge);
  if (!own || !other || !anyRole(own, CARRIES) || !anyRole(other, CARRIES)) return null;
  const heights = own.path.map((path, k) => {
    const [a, b] = ends[k]!;
    const at = fromTop(path, (a.y + b.y) / 2);
    return at === null ? null : belowTop(other.path[k]!, at).y;
  });
  if (!heights.every((y) => y !== null)) return null;
  return placeAt(target, level, 'along-seam', heights, below);
}

/** A piece that repeats another lies on it: what of the other's levels it reaches. */
const asParent = (piece: NestedPiece, levels: readonly LevelPlace[]): LevelPlace[] =>
  levels.flatMap(({ level, ends, below }) => {
    const heights = ends.map(([a, b]) => (a.y + b.y) / 2);
    const one = placeAt(piece, level, 'as-parent', heights, below);
    return one ? [one] : [];
  });

/** Levels whose place is common practice or a guess by shape, not drawn by the maker in any way. */
const GUESSED: readonly LevelReason[] = ['narrowest', 'usual-depth', 'cap-foot', 'below-crotch', 'half-leg'];

/** What was proposed and by what, pieces of one reason together; and the pieces that have no level line even so. */
export function levelFindings({ pieces, proposed }: ReturnType<typeof proposeLevels>): Finding[] {
  const nameOf = (id: string): string => pieceAt({ pieces }, id)!.name;
  const said = new Map<string, ProposedLevel[]>();
  for (const one of proposed) {
    if (one.reason === 'as-parent') continue;
    const key = `${one.level} ${one.reason}`;
    said.set(key, [...(said.get(key) ?? []), one]);
  }
  const found = [...said.values()].map((all) => {
    const { level, reason, piece, below } = all[0]!;
    return exchangeFinding(
      'level-proposed',
      GUESSED.includes(reason) ? 'warning' : 'note',
      all.length === 1 ? { piece, level } : { level },
      { level, reason, pieces: all.map((one) => nameOf(one.piece)), below: below ?? null },
      below === undefined ? {} : { amount: below },
    );
  });
  const without = pieces.filter((piece) => isTrunk(piece) && !hasLevels(piece));
  if (without.length === 0) return found;
  return [
    ...found,
    exchangeFinding('levels-guessed', 'warning', without.length === 1 ? { piece: without[0]!.id } : {}, {
      pieces: without.map((piece) => piece.name),
    }),
  ];
}
