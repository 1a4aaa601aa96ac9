import { flag, oneOf, whole } from './json.ts';
import { wornFromCut } from './worn-from-cut.ts';

type Document = Readonly<Record<string, unknown>>;

const isRecord = (value: unknown): value is Document =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

const readSide = oneOf('left', 'right');

/** `cut {count, mirrored}` and `bodySide` of version 1 become `worn`. */
function pieceWithWorn(value: unknown, at: string): unknown {
  if (!isRecord(value)) return value;
  const { cut, bodySide, ...rest } = value;
  if (cut === undefined) return value;
  const count = isRecord(cut) ? cut['count'] : undefined;
  const mirrored = isRecord(cut) ? cut['mirrored'] : undefined;
  const said = {
    count: whole(1, 100)(count, `${at}.cut.count`),
    mirrored: flag(mirrored, `${at}.cut.mirrored`),
  };
  const side = bodySide === undefined ? undefined : readSide(bodySide, `${at}.bodySide`);
  return {
    ...rest,
    worn: wornFromCut(said, side, value['half'] === 'back' ? 'right' : 'left'),
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
