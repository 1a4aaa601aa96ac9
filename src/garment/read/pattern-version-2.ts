import type { BodySide } from '../piece.ts';
import { wrong } from './json.ts';
import { wornFromCut } from './worn-from-cut.ts';

type Document = Readonly<Record<string, unknown>>;

const isRecord = (value: unknown): value is Document =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** `cut {count, mirrored}` and `bodySide` of version 1 become `worn`. */
function pieceWithWorn(value: unknown, at: string): unknown {
  if (!isRecord(value)) return value;
  const { cut, bodySide, ...rest } = value;
  if (cut === undefined) return value;
  const count = isRecord(cut) ? cut['count'] : undefined;
  const mirrored = isRecord(cut) ? cut['mirrored'] : undefined;
  if (typeof count !== 'number' || !Number.isInteger(count) || count < 1 || count > 100)
    wrong(`${at}.cut.count`, 'not-whole', 'There should be a whole number from 1 to 100 here.');
  if (typeof mirrored !== 'boolean')
    wrong(`${at}.cut.mirrored`, 'not-yes-or-no', 'There should be true or false here.');
  if (bodySide !== undefined && bodySide !== 'left' && bodySide !== 'right')
    wrong(`${at}.bodySide`, 'not-one-of', 'There should be left or right here.');
  const side: BodySide | undefined = bodySide;
  return {
    ...rest,
    worn: wornFromCut({ count, mirrored }, side, value['half'] === 'back' ? 'right' : 'left'),
  };
}

/**
 * A pattern of version 1, its roles said already, as one of version 2.
 * @param at its path in the document it stands in
 */
export function patternVersion2(doc: Document, at: string): Document {
  const pieces = doc['pieces'];
  return {
    ...doc,
    version: 2,
    pieces: Array.isArray(pieces)
      ? pieces.map((piece, i) => pieceWithWorn(piece, `${at === '' ? '' : `${at}.`}pieces[${i}]`))
      : pieces,
  };
}
