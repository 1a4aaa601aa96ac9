import { leaders } from '../../garment/index.ts';
import type { DrawnPiece } from '../../garment/index.ts';
import type { Param, Values } from '../entry/alteration.ts';
import type { Change } from '../follow/change.ts';
import { dartOf } from '../dart/dart.ts';
import { Refusal } from '../move/refusal.ts';
import { pieceOf } from '../role/roles.ts';

/** Which dart: of which piece. */
export const DART_PARAMS: readonly Param[] = [
  { id: 'piece', name: 'piece', kind: 'piece', default: '' },
  { id: 'dart', name: 'dart', kind: 'dart', default: '' },
];

/** Where it goes: an edge of the piece and the share of its length. */
export const PLACE_PARAMS: readonly Param[] = [
  { id: 'edge', name: 'new edge', kind: 'edge', default: '' },
  { id: 'at', name: 'how far along that edge', kind: 'share', default: 0.5, min: 0.02, max: 0.98 },
];

/** The piece and dart meant: an empty piece is the first that has a dart. Refusal `no-dart`, `piece-missing`, `dart-missing`. */
export function chosenDart(change: Change, values: Values): { piece: DrawnPiece; dart: string } {
  const id = values.word('piece');
  const piece =
    id === '' ? leaders(change.garment).find((p) => p.darts.length > 0) : pieceOf(change.garment, id);
  if (!piece) throw new Refusal('no-dart', 'There is no dart on this pattern.');
  return { piece, dart: dartOf(piece, values.word('dart')).dart.id };
}

/** The edge meant; Refusal `no-edge` when none was named. */
export function chosenEdge(piece: DrawnPiece, values: Values): { edge: string; at: number } {
  const edge = values.word('edge');
  if (edge === '')
    throw new Refusal('no-edge', `Say to which edge of ${piece.name} the dart goes.`, { piece: piece.id });
  return { edge, at: values.mm('at') };
}
