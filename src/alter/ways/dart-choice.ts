import { type Phrase, t, called, leaders } from '../../garment/index.ts';
import type { DrawnPiece } from '../../garment/index.ts';
import type { Param, Values } from '../entry/alteration.ts';
import type { Change } from '../follow/change.ts';
import { dartOf } from '../dart/dart.ts';
import { Refusal } from '../words/refusal.ts';
import { pieceOf } from '../role/roles.ts';

/** Which dart: of which piece. */
export const DART_PARAMS: readonly Param[] = [
  { id: 'piece', name: t`piece`, kind: 'piece', default: '' },
  { id: 'dart', name: t`dart`, kind: 'dart', default: '' },
];

/** Where it goes: an edge of the piece and the share of its length. */
export const PLACE_PARAMS: readonly Param[] = [
  { id: 'edge', name: t`new edge`, kind: 'edge', default: '' },
  { id: 'at', name: t`how far along that edge`, kind: 'share', default: 0.5, min: 0.02, max: 0.98 },
];

/** The piece and dart meant: an empty piece is the first that has a dart. Refusal `no-dart`, `piece-missing`, `dart-missing`. */
export function chosenDart(change: Change, values: Values): { piece: DrawnPiece; dart: string } {
  const id = values.word('piece');
  const piece =
    id === '' ? leaders(change.garment).find((p) => p.darts.length > 0) : pieceOf(change.garment, id);
  if (!piece) throw new Refusal('no-dart', { role: 'dart', on: null });
  return { piece, dart: dartOf(piece, values.word('dart')).dart.id };
}

/** The edge meant; Refusal `no-edge` when none was named. */
export function chosenEdge(piece: DrawnPiece, values: Values): { edge: string; at: number } {
  const edge = values.word('edge');
  if (edge === '') throw new Refusal('no-edge', { piece: piece.name }, { piece: piece.id });
  return { edge, at: values.mm('at') };
}

/** The dart meant, in words: `waist dart of Front`. By their ids, as they were given. */
export const sayDart = (values: Values): Phrase => {
  const [dart, piece] = [values.word('dart'), values.word('piece')];
  return t`${dart === '' ? t`Dart` : called(dart)}${piece === '' ? t`` : t` of ${called(piece)}`}`;
};

/** The edge meant, in words. */
export const sayEdge = (values: Values): Phrase =>
  values.word('edge') === '' ? t`another edge` : t`${called(values.word('edge'))}`;
