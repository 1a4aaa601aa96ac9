import {
  InputError,
  parseJson,
  parseMeasuresCsv,
  readBody,
  readFitting,
  readPattern,
  readPerson,
  readPlainTable,
  type Body,
  type Finding,
  type Fitting,
  type Pattern,
  type Person,
  type Question,
  type SizeChart,
} from '../garment/index.ts';
import { decodeText } from './decode-text.ts';
import { deskFinding, deskProblem } from './desk-words.ts';
import { bareName } from './file-name.ts';

/** What the person says beside the file, where a table itself cannot. */
export interface Wishes {
  /** Id of a person that is made of a table: from the face, for there is no chance below it. */
  readonly id: string;
  /** Whose measures they are; a woman's when not said, and then told. */
  readonly wearer?: Body['wearer'] | undefined;
  /** Which waist was taped, and is meant by a size table. */
  readonly waist?: Body['waist'] | undefined;
  /** What a table is where the face knows; by its first line where it does not. */
  readonly table?: 'measures' | 'sizes' | undefined;
  /** Unit of a size table's rows that do not say their own. */
  readonly unit?: 'in' | 'cm' | undefined;
}

/** What was in a file. A drawing is told and left as it is: reading it takes long and asks much. */
export type Opened =
  | { readonly kind: 'fitting'; readonly fitting: Fitting }
  | { readonly kind: 'pattern'; readonly pattern: Pattern }
  | { readonly kind: 'person'; readonly person: Person }
  | {
      readonly kind: 'measures';
      readonly body: Body;
      readonly questions: readonly Question[];
      readonly findings: readonly Finding[];
    }
  | { readonly kind: 'chart'; readonly name: string; readonly chart: SizeChart }
  | { readonly kind: 'drawing' };

/** How drawings begin that other programs write. */
const DRAWING = /%PDF-|<svg[\s>]|<!DOCTYPE svg|^\s*(?:999|0)\s*\r?\n|AutoCAD Binary DXF/i;

/** Whether a file is a drawing: by its first bytes, for names lie; an ending still sends a damaged one to the reader that can say what is wrong. */
function isDrawing(bytes: Uint8Array, name: string): boolean {
  return (
    /\.(pdf|svg|dxf)$/i.test(name) || DRAWING.test(new TextDecoder('latin1').decode(bytes.subarray(0, 4096)))
  );
}

function openDocument(text: string): Opened {
  const value = parseJson(text);
  const format = typeof value === 'object' && value !== null && 'format' in value ? value.format : null;
  if (format === 'pintrue-fitting') return { kind: 'fitting', fitting: readFitting(value) };
  if (format === 'pintrue-pattern') return { kind: 'pattern', pattern: readPattern(value) };
  if (format === 'pintrue-body') return { kind: 'person', person: { body: readBody(value), fittings: [] } };
  if (format === 'pintrue-person') return { kind: 'person', person: readPerson(value) };
  throw new InputError(deskProblem('unknown-document', {}));
}

/** A person sees lengths the way most of them were typed. */
function shownAs(readings: Body['readings']): Body['show'] {
  const all = Object.values(readings).flat();
  const inches = all.filter((r) => /["″]|\bin\b|inch/i.test(r.typed ?? '')).length;
  return inches * 2 > all.length ? 'in' : 'cm';
}

function openMeasures(text: string, name: string, wishes: Wishes): Opened {
  const wearer = wishes.wearer ?? 'woman';
  const { readings, questions } = parseMeasuresCsv(text, wearer);
  const body: Body = {
    id: wishes.id,
    name: bareName(name, 'body'),
    wearer,
    show: shownAs(readings),
    waist: wishes.waist ?? 'unsaid',
    readings,
  };
  const findings = wishes.wearer === undefined ? [deskFinding('wearer-assumed', 'note', {}, { wearer })] : [];
  return { kind: 'measures', body, questions, findings };
}

/** A size table names sizes in its first line: after `measure,kind,unit`, or after a corner that is empty or says `Size`. */
const SIZE_TABLE = /^\s*"?(?:measure"?\s*[,;\t]\s*"?kind|sizes?\b|[,;\t])/i;

function openTable(text: string, name: string, wishes: Wishes): Opened {
  const kind = wishes.table ?? (SIZE_TABLE.test(text.replace(/^[\r\n ]+/, '')) ? 'sizes' : 'measures');
  if (kind === 'measures') return openMeasures(text, name, wishes);
  const chart = readPlainTable(text, wishes.unit, wishes.waist);
  return { kind: 'chart', name: bareName(name, 'table'), chart };
}

/**
 * Opens a file of any kind that Pintrue writes or reads, for every face in the same way: documents, tables of measures and of sizes in any
 * encoding a spreadsheet saves (`decodeText`); a drawing is only told.
 * @throws InputError with the file's name and the place in it; nothing is half read
 */
export function openBytes(bytes: Uint8Array, name: string, wishes: Wishes): Opened {
  if (isDrawing(bytes, name)) return { kind: 'drawing' };
  const text = decodeText(bytes);
  try {
    return /^\s*[{[]/.test(text) ? openDocument(text) : openTable(text, name, wishes);
  } catch (error) {
    throw error instanceof InputError ? error.inFile(name) : error;
  }
}
