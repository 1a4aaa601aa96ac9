import { called, calledAll, figure, fineLen, plural, t, type Phrase } from '../words/phrase.ts';

/** What stands in a document where something else should. */
export type Found = 'nothing' | 'list' | 'record' | 'text' | 'number' | 'truth';

const FOUND: Readonly<Record<Found, Phrase>> = {
  nothing: t`nothing`,
  list: t`a list`,
  record: t`a record`,
  text: t`a text`,
  number: t`a number`,
  truth: t`true or false`,
};

/** Things of a pattern of which no two may have the same name. */
export type Named = 'edges' | 'lines' | 'marks' | 'sizes' | 'pieces' | 'seams';

const NAMED: Readonly<Record<Named, Phrase>> = {
  edges: t`edges of this piece`,
  lines: t`lines of this piece`,
  marks: t`marks of this piece`,
  sizes: t`sizes`,
  pieces: t`pieces`,
  seams: t`seams`,
};

const millions = (count: number): Phrase => t`${figure(count / 1e6)} million`;

/** What can be wrong with a document, by code. Texts that are given are cut to what a line can show. */
export const DOCUMENT_WORDS = {
  'not-text': ({ found }: { found: Found }) => t`There should be text here, not ${FOUND[found]}.`,
  'too-long': ({ most }: { most: number }) => t`This text is longer than ${most} characters.`,
  empty: () => t`A name is missing here.`,
  'reserved-name': ({ name }: { name: string }) => t`"${called(name)}" can't be used as a name.`,
  'not-a-number': ({ found }: { found: Found }) => t`There should be a number here, not ${FOUND[found]}.`,
  'out-of-range': ({ given, least, most }: { given: number; least: number; most: number }) =>
    t`${given} is outside ${least} to ${most}.`,
  'not-whole': ({ given }: { given: string }) => t`${called(given)} should be a whole number.`,
  'not-yes-or-no': ({ found }: { found: Found }) =>
    t`There should be true or false here, not ${FOUND[found]}.`,
  'not-true': ({ found }: { found: Found }) => t`There should be true here, or nothing, not ${FOUND[found]}.`,
  'not-one-of': ({ given, known }: { given: string; known: readonly string[] }) =>
    t`${called(given)} should be one of ${calledAll(known)}.`,
  'not-a-date': ({ given }: { given: string }) =>
    t`"${called(given)}" should be a date such as ${called('2026-03-01')}.`,
  'not-a-list': ({ found }: { found: Found }) => t`There should be a list here, not ${FOUND[found]}.`,
  'list-length': ({ has, least, most }: { has: number; least: number; most: number }) =>
    t`There ${plural(has, t`is`, t`are`)} ${has} ${plural(has, t`entry`, t`entries`)} here; ${least} to ${most} are allowed.`,
  'not-a-record': ({ found }: { found: Found }) => t`There should be a record { } here, not ${FOUND[found]}.`,
  'unknown-field': () => t`This field is not known here.`,
  missing: () => t`This field is missing.`,
  'not-a-photograph': () => t`There should be a photograph here: a JPEG picture, written in base64.`,
  'too-large': ({ most }: { most: number }) => t`The document is over ${millions(most)} characters.`,
  'too-deep': ({ most }: { most: number }) => t`The document is nested deeper than ${most} levels.`,
  'not-json': () => t`The file is broken here: this is not JSON.`,
  'not-a-document': ({ wanted }: { wanted: string }) => t`This is not a ${called(wanted)} document.`,
  'other-format': ({ wanted, found }: { wanted: string; found: string | null }) =>
    t`A "${called(wanted)}" document is wanted here; this is ${found === null ? t`none we know` : t`a "${called(found)}"`}.`,
  version: () => t`The version should be a whole number.`,
  'newer-version': ({ version, newest }: { version: number; newest: number }) =>
    t`This document is of version ${version}; this Pintrue reads up to ${newest}. Please update it.`,
  'path-length': ({ points }: { points: number }) =>
    t`A path has 3n + 1 points (4, 7, 10 …); this one has ${points}.`,
  faces: ({ parts, turned }: { parts: number; turned: number }) =>
    t`None or half of the parts are cut turned over; of these ${parts} it is ${turned}.`,
  'name-twice': ({ what, name }: { what: Named; name: string }) =>
    t`Two ${NAMED[what]} are called "${called(name)}".`,
  'sizes-differ': ({ sizes, has }: { sizes: number; has: number }) =>
    t`There should be ${sizes} values here, one per size; there are ${has}.`,
  topology: ({ points, first }: { points: number; first: number }) =>
    t`This line has ${points} points here and ${first} points in the first size; every size needs the same.`,
  'outline-open': ({ gap, edge, next }: { gap: number; edge: string; next: string }) =>
    t`The outline is open here: ${fineLen(gap)} from the end of "${called(edge)}" to the start of "${called(next)}".`,
  'dart-legs': () => t`The two legs of a dart are edges of its piece, one after the other.`,
  'unknown-piece': ({ piece }: { piece: string }) => t`There is no piece "${called(piece)}".`,
  'unknown-edge': ({ piece, edge }: { piece: string; edge: string }) =>
    t`Piece "${called(piece)}" has no edge "${called(edge)}".`,
  'unknown-seam': ({ seam }: { seam: string }) => t`There is no seam "${called(seam)}".`,
  range: () => t`The least ease or gathering is more than the most.`,
};

/** What is empty in a table and should not be. */
export type Lacking = 'table' | 'measures' | 'rows' | 'row' | 'size' | 'value';

const LACKING: Readonly<Record<Lacking, Phrase>> = {
  table: t`The table is empty.`,
  measures: t`No measurements follow the first row.`,
  rows: t`No rows follow the sizes.`,
  row: t`This row holds no values.`,
  size: t`This size has no name.`,
  value: t`The value is missing.`,
};

const UNITS = calledAll(['in', 'cm', 'mm'], 'or');

/** What can be wrong with a table of measures or of sizes, by code. What a length is wrong in: LENGTH_WORDS. */
export const SHEET_WORDS = {
  'text-after-quote': () =>
    t`There is text after the closing quote. An inch mark inside quotes is written twice: ${called('"40"""')}.`,
  'open-quote': () => t`A quote is opened and never closed.`,
  'too-many-columns': ({ most }: { most: number }) => t`More than ${most} columns.`,
  'too-many-rows': ({ most }: { most: number }) => t`More than ${most} rows.`,
  'too-large': ({ most }: { most: number }) =>
    t`The text is over ${millions(most)} characters: not a table of measurements.`,
  'not-text': () => t`This is not a text file (save it as CSV).`,
  empty: ({ what }: { what: Lacking }) => LACKING[what],
  header: (of: { expected: readonly string[]; column: number; wanted: string; found: string | null }) =>
    t`The first row should read ${called(`${of.expected.join(',')}…`)}; column ${of.column} should be "${called(of.wanted)}" but ${of.found === null ? t`it is missing` : t`"${called(of.found)}" is there`}.`,
  'not-degrees': ({ given }: { given: string }) => t`"${called(given)}" is not an angle in degrees.`,
  'unknown-measure': ({ given, near }: { given: string; near: string | null }) =>
    t`"${called(given)}" is not a measure known here${near === null ? null : t`; did you mean ${called(near)}?`}`,
  unit: ({ given }: { given: string }) =>
    given === ''
      ? t`The unit is missing: ${UNITS}.`
      : t`"${called(given)}" is not a unit known here: ${UNITS}.`,
  'too-many-cells': () =>
    t`This row has more cells than the first row. A decimal comma needs quotes (${called('"102,9"')}), or semicolons between the cells.`,
  side: ({ given }: { given: string }) =>
    t`"${called(given)}" is not a side: ${called('left')}, ${called('right')}, or nothing where it is not said.`,
  'no-sizes': () =>
    t`No sizes are named in the first row. Begin it with the word Size, then the name of each size.`,
  'too-long': ({ most }: { most: number }) => t`A size has at most ${most} characters.`,
  'size-twice': ({ size }: { size: string }) => t`Size ${called(size)} is there twice.`,
  'sizes-fall': ({ size, before }: { size: string; before: string }) =>
    t`Size ${called(size)} is smaller here than size ${called(before)}. Sizes go from the smallest to the largest, left to right.`,
  kind: ({ given }: { given: string }) =>
    t`"${called(given)}" should be ${called('body')} or ${called('finished')}.`,
  'row-twice': ({ measure, kind }: { measure: string; kind: string }) =>
    t`${called(measure)} (${called(kind)}) is there twice.`,
};
