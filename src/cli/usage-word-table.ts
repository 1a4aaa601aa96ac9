import { called, calledAll, keyWord, listOf, problemMaker, t, type Phrase } from '../garment/index.ts';

/** What takes one file of some kind. */
const ONE_FILE = {
  fitting: t`one fitting`,
  'fitting-or-pattern': t`one file: a fitting or a pattern`,
  'pattern-or-fitting': t`one pattern or fitting`,
  drawing: t`one file: PDF, SVG or DXF`,
} as const;

/** What a word given to `roles` is not. */
const ROLES = {
  piece: t`a piece`,
  edge: t`an edge`,
  'piece-half': t`where a piece is worn`,
  half: t`a half of the body`,
} as const;

/** Parts of what was seen in a trial. */
const SEEN = { where: t`where`, direction: t`the direction` } as const;

/** A word that may have been meant, said after what is wrong. */
const meant = (near: string | null): Phrase => (near === null ? t`` : t`; did you mean ${called(near)}`);

/** What can be wrong with what was typed. What is typed, options and ids, is said as it is typed. */
export const USAGE_WORDS = {
  'verb-unknown': ({ verb, near }: { verb: string; near: string | null }) =>
    t`"${called(verb)}" is not something ${called('pintrue')} can do${meant(near)}. Try ${called('pintrue help')}.`,
  'option-unknown': ({ option }: { option: string }) =>
    t`Unknown option '${called(option)}'. ${called('pintrue help VERB')} shows the options of a verb.`,
  'option-bare': ({ option }: { option: string }) => t`${called(option)} needs a value after it.`,
  'option-flag': ({ option }: { option: string }) => t`${called(option)} takes no value.`,
  'option-dash': ({ option }: { option: string }) =>
    t`What follows ${called(option)} begins with a dash. If it is its value, write ${called(`${option}=VALUE`)}.`,
  'option-missing': ({ option, what }: { option: string; what: Phrase }) =>
    t`${called(`--${option}`)} is missing: ${what}.`,
  'option-choice': ({ option, known, given }: { option: string; known: readonly string[]; given: string }) =>
    t`${called(`--${option}`)} should be one of ${calledAll(known)}, not "${called(given)}".`,
  'option-number': (of: { option: string; whole: boolean; least: number; most: number; given: string }) =>
    t`${called(`--${of.option}`)} should be ${of.whole ? t`a whole number` : t`a number`} from ${of.least} to ${of.most}, not "${called(of.given)}".`,
  'option-share': ({ option, given }: { option: string; given: string }) =>
    t`${called(`--${option}`)} should be a share such as ${called('50%')} or ${called('0.5')}, not "${called(given)}".`,
  'share-range': ({ where, given }: { where: string; given: string }) =>
    t`${called(where)} should be a share from 0 to 100 %, not "${called(given)}".`,
  'option-pair': ({ option, given }: { option: string; given: string }) =>
    t`${called(`--${option}`)} should read ${called('name=value')}, not "${called(given)}".`,
  length: ({ where, why }: { where: string; why: Phrase }) => t`${called(where)}: ${why}`,
  'length-unit': ({ where, given }: { where: string; given: string }) =>
    t`${called(where)}: write the unit too, as in ${called(`${given}mm`)} or ${called(`${given}in`)}.`,
  'level-unknown': (of: { where: string; given: string; near: string | null; known: readonly string[] }) =>
    t`${called(of.where)}: "${called(of.given)}" is not a level${meant(of.near)}. Levels are ${calledAll(of.known)}.`,
  'size-unknown': ({ given, known }: { given: string; known: readonly string[] }) =>
    t`There is no size "${called(given)}"; there are ${calledAll(known)}.`,
  'one-file': ({ verb, takes }: { verb: string; takes: keyof typeof ONE_FILE }) =>
    t`${called(verb)} takes ${ONE_FILE[takes]}.`,
  'size-of-fitting': () => t`A fitting has its own sizes; ${called('--size')} is for a pattern.`,
  'out-ending': ({ endings, given }: { endings: readonly string[]; given: string }) =>
    t`${called('--out')} should end in ${calledAll(endings, 'or')}, not "${called(given)}".`,
  'seam-unknown': ({ seam, known }: { seam: string; known: readonly string[] }) =>
    t`There is no seam "${called(seam)}"; there are ${calledAll(known)}.`,
  'piece-unknown': ({ piece, known }: { piece: string; known: readonly string[] }) =>
    t`There is no piece "${called(piece)}"; there are ${calledAll(known)}.`,
  'edge-unknown': ({ piece, edge, known }: { piece: string; edge: string; known: readonly string[] }) =>
    t`${called(piece)} has no edge "${called(edge)}"; it has ${calledAll(known)}.`,

  'price-form': ({ given }: { given: string }) =>
    t`${called('--price')} should read ${called('12.50/m')} or ${called('9/yd')}, not "${called(given)}".`,
  'cloth-unknown': ({ given, known }: { given: string; known: readonly string[] }) =>
    t`${called('--width')} ${called(given)}: there is no such cloth; there are ${calledAll(known)}.`,
  'cloth-unused': ({ cloth, used }: { cloth: string; used: readonly string[] }) =>
    t`No piece is cut of ${keyWord('cloth', cloth)}; there are pieces of ${listOf(used.map((one) => t`${keyWord('cloth', one)}`))}.`,

  'sample-which': () => t`Which sample? Give its id before ${called('--out')}.`,
  'sample-unknown': ({ given, known }: { given: string; known: readonly string[] }) =>
    t`There is no sample "${called(given)}"; there are ${calledAll(known)}.`,
  'sample-where': ({ sample }: { sample: string }) =>
    t`Where to? ${called(`samples ${sample} --out FILE.json`)}`,

  'plan-files': () => t`${called('plan')} takes at most one fitting.`,
  'plan-alone': () => t`A fitting has its own body, pattern and choices: give it alone.`,
  'plan-both': () => t`Give ${called('--chart')} or ${called('--pattern')}, not both.`,

  'seen-word': (of: { what: keyof typeof SEEN; known: readonly string[]; given: string }) =>
    t`${called('--saw')}: ${SEEN[of.what]} should be one of ${calledAll(of.known)}, not "${called(of.given)}".`,
  'seen-form': ({ given }: { given: string }) =>
    t`${called('--saw')} reads "${called('LINE, WHERE, DIRECTION[, AMOUNT[, SECOND AMOUNT]]')}", not "${called(given)}".`,
  'accept-unknown': ({ given, count }: { given: string; count: number }) =>
    t`${called('--accept')}: there is no proposal ${called(given)} that can be made; there are ${count}.`,
  'accept-again': ({ given, step }: { given: string; step: string }) =>
    t`${called('--accept')}: proposal ${called(given)} was accepted already, as step "${called(step)}".`,

  'keep-side': ({ seam }: { seam: string }) =>
    t`${called(`--keep ${seam}`)} should be ${called('a')} or ${called('b')}.`,
  'format-missing': ({ known }: { known: readonly string[] }) =>
    t`${called('--format')} is missing: ${calledAll(known, 'or')}.`,

  'alteration-unknown': ({ given, near }: { given: string; near: string | null }) =>
    t`There is no alteration "${called(given)}"${meant(near)}. ${called('pintrue alter')} lists them.`,
  'amount-form': ({ entry, known }: { entry: string; known: readonly string[] }) =>
    t`Amounts read ${called('name=value')}; ${called(entry)} takes ${calledAll(known)}.`,
  'amount-degrees': ({ name, given }: { name: string; given: string }) =>
    t`${called(name)} should be degrees, not "${called(given)}".`,
  'step-unknown': ({ step, known }: { step: string; known: readonly string[] }) =>
    t`There is no step "${called(step)}"; there are ${known.length === 0 ? t`none` : calledAll(known)}.`,

  'answers-of-fitting': () =>
    t`Only what is found of a fitting can be answered, and only a fitting is written.`,
  'answer-form': ({ given }: { given: string }) =>
    t`What is meant so reads ${called('CODE=REASON')} or ${called('CODE/PLACE=REASON')}, not "${called(given)}".`,
  'answer-unknown': ({ given, known }: { given: string; known: readonly string[] }) =>
    t`Nothing was found that "${called(given)}" could be about; ${known.length === 0 ? t`nothing can be answered here` : t`it may be ${calledAll(known, 'or')}`}.`,

  'role-unknown': (of: {
    given: string;
    what: keyof typeof ROLES;
    near: string | null;
    known: readonly string[];
  }) => t`"${called(of.given)}" is not ${ROLES[of.what]}${meant(of.near)}. There are ${calledAll(of.known)}.`,
  'role-form': ({ given }: { given: string }) =>
    t`What a place is reads ${called('PIECE=ROLE')} or ${called('PIECE/EDGE=ROLE')}, not "${called(given)}".`,
  'role-not-known': ({ given }: { given: string }) =>
    t`${called(given)}: nobody knows yet what it is. ${called('pintrue roles')} lists the words to say it with.`,
  'other-pattern': ({ file, pattern, own }: { file: string; pattern: string; own: string }) =>
    t`${called(file)} is the pattern “${called(pattern)}”; this is made with “${called(own)}”.`,
  'nothing-said': () => t`There is nothing to write: say what a piece or an edge is, or ${called('--from')}.`,

  'included-negative': () =>
    t`${called('--included')} should be a width such as ${called('15mm')}, or 0 where the lines are stitching lines.`,
  'bust-difference-negative': () =>
    t`${called('--bust-difference')} should be 0 or more, such as ${called('2in')}.`,
  'answers-missing': ({ file, missing }: { file: string; missing: readonly Phrase[] }) =>
    missing.reduce(
      (all, one) => t`${all}\n  ${one}`,
      t`Before a pattern can be made of ${called(file)}, say what no line of it shows:`,
    ),
  'chart-sizes': ({ told, drawn, sizes }: { told: number; drawn: number; sizes: readonly string[] }) =>
    t`The size chart has ${told} sizes and the drawing ${drawn} (${calledAll(sizes)}). Give a chart with the sizes that are drawn, in the same order.`,
};

/** What files hold. */
const HOLDS = {
  fitting: t`a fitting`,
  pattern: t`a pattern`,
  person: t`a person`,
  measures: t`a table of measures`,
  chart: t`a size table`,
  drawing: t`a drawing, which “${called('pintrue read')}” brings in`,
} as const;

const WANTED = {
  body: t`A person or a table of measures`,
  chart: t`A size table`,
  pattern: t`A pattern`,
  fitting: t`A fitting`,
  either: t`A fitting or a pattern`,
} as const;

/** Why the system refuses a file, by its own codes. */
const WHY: Readonly<Record<string, Phrase>> = {
  ENOENT: t`there is no such file or folder`,
  EACCES: t`this is not allowed here`,
  EISDIR: t`this is a folder`,
  ENOSPC: t`the disk is full`,
};

/** What can be wrong with a file that was named. */
export const FILE_WORDS = {
  file: ({ doing, code }: { doing: 'read' | 'write'; code: string }) =>
    t`Can't ${doing === 'read' ? t`read it` : t`write it`}: ${WHY[code] ?? t`${called(code)}`}.`,
  'too-large': ({ most }: { most: number }) => t`The file is over ${most / 1e6} million bytes.`,
  'other-format': ({ wanted, found }: { wanted: keyof typeof WANTED; found: keyof typeof HOLDS }) =>
    t`${WANTED[wanted]} is wanted here; this is ${HOLDS[found]}.`,
  'no-pieces': ({ pattern }: { pattern: string }) =>
    t`“${called(pattern)}” is a size table without pieces: there is nothing to alter, to walk, to print or to lay. “${called('pintrue plan')}” gives its sizes and the amounts to mark on your own paper.`,
};

export const fileProblem = problemMaker(FILE_WORDS);
