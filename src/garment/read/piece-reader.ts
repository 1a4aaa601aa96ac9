import type { Path, Point } from '../../geometry/index.ts';
import {
  byKind,
  fields,
  flag,
  list,
  maybe,
  name,
  number,
  oneOf,
  text,
  whole,
  wrong,
  yes,
  type Read,
} from './json.ts';
import { EDGE_ROLES, HALVES, PIECE_HALVES, PIECE_ROLES, SIGN_ROLES } from '../role-table.ts';
import { LEVEL_REASONS } from '../level-reason.ts';
import type { Dart, Edge, InnerLine, Mark, NestedPiece, Notch, Worn } from '../piece.ts';
import { timesTurned } from '../worn.ts';
import type { Band, EdgeRef, Follower, GarmentLevel, Seam } from '../seam.ts';

/** No garment piece reaches 100 m. mm. */
const FARTHEST = 100_000;
const MOST_SIZES = 60;

const readPoint: Read<Point> = fields<Point>({
  x: number(-FARTHEST, FARTHEST),
  y: number(-FARTHEST, FARTHEST),
});

const readPoints = list(readPoint, 4, 4_000);
/** 3n + 1 points: whole cubics. */
const readPath: Read<Path> = (value, at) => {
  const points = readPoints(value, at);
  if (points.length % 3 !== 1) wrong(at, 'path-length', { points: points.length });
  return points;
};

const share = number(0, 1);
const sizes = <T>(read: Read<T>): Read<readonly T[]> => list(read, 1, MOST_SIZES);

const readNotch = fields<Notch<'nest'>>({
  id: name,
  at: sizes(share),
  count: oneOf(1, 2, 3),
  role: maybe(oneOf(...SIGN_ROLES)),
});

const readEdge = fields<Edge<'nest'>>({
  id: name,
  name: text(200),
  kind: oneOf('seam', 'dart', 'fold', 'hem', 'opening', 'free'),
  role: maybe(oneOf(...EDGE_ROLES)),
  also: maybe(oneOf(...EDGE_ROLES)),
  half: maybe(oneOf(...HALVES)),
  unsure: maybe(yes),
  path: sizes(readPath),
  from: name,
  crossings: list(fields<Edge<'nest'>['crossings'][number]>({ level: name, at: sizes(share) }), 0, 40),
  allowance: number(0, 500),
  notches: list(readNotch, 0, 100),
});

const readLine = fields<InnerLine<'nest'>>({
  id: name,
  kind: oneOf('grain', 'level', 'adjust', 'fold', 'placement', 'stitch'),
  level: maybe(name),
  proposed: maybe(oneOf(...LEVEL_REASONS)),
  path: sizes(readPath),
});

const readMark = fields<Mark<'nest'>>({
  id: name,
  kind: oneOf('bust-point', 'dart-point', 'dot', 'button', 'drill'),
  level: name,
  role: maybe(oneOf(...SIGN_ROLES)),
  at: sizes(readPoint),
});

const readLegs: Read<Dart['legs']> = (value, at) => {
  const [first, second] = list(name, 2, 2)(value, at);
  return [first!, second!];
};

const readDart = fields<Dart>({
  id: name,
  name: text(200),
  legs: readLegs,
  foldToward: oneOf('first', 'second'),
  serves: name,
});

const readParts = list(
  fields<Worn>({
    side: oneOf('left', 'right', 'both'),
    face: oneOf('up', 'down'),
    lies: maybe(oneOf('over', 'under')),
  }),
  1,
  100,
);
const readWorn: Read<readonly Worn[]> = (value, at) => {
  const worn = readParts(value, at);
  const turned = timesTurned({ worn });
  if (turned > 0 && turned !== Math.floor(worn.length / 2))
    wrong(at, 'faces', { parts: worn.length, turned });
  return worn;
};

/** A piece in all sizes, by its shape alone; what it refers to is checked by `checkPattern`. */
export const readPiece: Read<NestedPiece> = fields<NestedPiece>({
  id: name,
  name: text(200),
  role: maybe(oneOf(...PIECE_ROLES)),
  half: maybe(oneOf(...PIECE_HALVES)),
  unsure: maybe(yes),
  number: whole(0, 10_000),
  cloth: oneOf('shell', 'lining', 'interfacing', 'contrast'),
  of: maybe(name),
  worn: readWorn,
  edges: list(readEdge, 2, 200),
  darts: list(readDart, 0, 40),
  lines: list(readLine, 0, 200),
  marks: list(readMark, 0, 500),
});

const readEdgeRef = fields<EdgeRef>({ piece: name, edge: name, backwards: maybe(flag) });
type Join = Seam['join'];

export const readSeam: Read<Seam> = fields<Seam>({
  id: name,
  name: text(200),
  a: list(readEdgeRef, 1, 60),
  b: list(readEdgeRef, 1, 60),
  join: byKind<Join>({
    plain: fields<Extract<Join, { kind: 'plain' }>>({ kind: oneOf('plain') }),
    eased: fields<Extract<Join, { kind: 'eased' }>>({
      kind: oneOf('eased'),
      least: number(-1_000, 1_000),
      most: number(-1_000, 1_000),
    }),
    gathered: fields<Extract<Join, { kind: 'gathered' }>>({
      kind: oneOf('gathered'),
      least: number(0, 20),
      most: number(0, 20),
    }),
  }),
  order: number(),
  keep: maybe(oneOf('a', 'b')),
  movable: flag,
});

export const readFollower: Read<Follower> = fields<Follower>({
  piece: name,
  parent: name,
  role: oneOf('facing', 'lining', 'interfacing', 'pocket'),
  edges: list(fields<Follower['edges'][number]>({ own: name, parent: name, apart: maybe(flag) }), 0, 200),
});

export const readBand: Read<Band> = fields<Band>({ piece: name, seam: name });

export const readGarmentLevel: Read<GarmentLevel> = fields<GarmentLevel>({
  level: name,
  pieces: list(name, 0, 200),
});
