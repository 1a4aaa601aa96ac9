import { called, MM_PER, renderPhrase, t, type Phrase, type Tell } from '../garment/index.ts';
import { linePath } from '../geometry/index.ts';
import type { Path, Point } from '../geometry/index.ts';
import { filledHead } from './arrow.ts';
import { circlePath } from './circle.ts';
import type { Figure, Stroke, Words } from './drawing.ts';
import { LAYERS } from './ink.ts';
import type { LayerId } from './ink.ts';
import { beside, forPerson, KEY_HEAD, SQUARE_WORDS } from './printed-words.ts';
import { ruler, testSquare } from './ruler.ts';

/** What the first page says above its squares. */
export interface Heading {
  readonly title: string;
  readonly person?: string;
  readonly size: Phrase;
  readonly date: string;
  /** Further lines for the first page: cautions, how it is to be sewn. */
  readonly notes?: readonly Phrase[];
  /** In whose unit all printed words are. */
  readonly tell: Tell;
}

/** What stands at the foot of every page: the garment, whose it is and when. */
export const headed = ({ title, person, date }: Heading): readonly (Phrase | null)[] => [
  t`${called(title)}`,
  person ? t`${called(person)}` : null,
  t`${called(date)}`,
];

/** Room for the rulers and squares; nothing smaller can hold a 200 mm ruler. */
export const FRONT_WIDTH_MM = 190;
const LEAST_HEIGHT_MM = 215;
const SQUARES_AT = 76;
/** From the squares down to the first line of what must be read, and from line to line. */
const LINES_UNDER = 14;
const LINE_MM = 4.9;
/** From name to name in the list of pieces. */
const NAME_MM = 4.6;
/** The ruler along the foot. */
const FOOT_MM = 12;

/** How the front reads, line by line: what to measure, what to mind. */
const linesOf = ({ tell, notes }: Heading, how: readonly Phrase[]): readonly string[] =>
  [...how, ...(notes ?? [])].flatMap((note) => broken(renderPhrase(note, tell), LINE_LETTERS));

/** Height of a front that has room for all its lines and a list of so many pieces, mm. */
export const frontHeight = (heading: Heading, how: readonly Phrase[], pieces: number): number =>
  Math.max(
    LEAST_HEIGHT_MM,
    SQUARES_AT + LINES_UNDER + linesOf(heading, how).length * LINE_MM + (pieces + 1) * NAME_MM + FOOT_MM,
  );
const KEY_AT_X = 118;

/** The part of a front that is free for the map or the list of pieces, from its lower left corner. */
export interface Free {
  readonly at: Point;
  readonly width: number;
  readonly height: number;
}

function text(says: string, at: Point, size: number, bold = false): Words {
  return { layer: 'page', text: says, at, size, angle: 0, align: 'start', bold, grey: 0 };
}

/** How a layer looks on the pieces, 20 mm long. */
function sampleOf(id: LayerId, at: Point): { path: Path; filled?: boolean }[] {
  const to = (x: number, y = 0): Point => ({ x: at.x + x, y: at.y + y });
  const line = { path: linePath(to(0), to(20)) };
  switch (id) {
    case 'grain':
      return [
        line,
        ...[0, 20].map((x) => ({ path: filledHead(to(x), { x: x - 10, y: 0 }, 4), filled: true })),
      ];
    case 'fold':
      return [line, { path: filledHead(to(10, 0.2), { x: 0, y: 1 }, 3), filled: true }];
    case 'notches':
      return [8, 12].map((x) => ({ path: linePath(to(x, -1.8), to(x, 1.8)) }));
    case 'marks':
      return [
        { path: circlePath(to(6), 1.4) },
        { path: circlePath(to(13), 1.4) },
        { path: linePath(to(10.8), to(15.2)) },
        { path: linePath(to(13, -2.2), to(13, 2.2)) },
      ];
    case 'adjust':
      return [0.8, -0.8].map((y) => ({ path: linePath(to(0, y), to(20, y)) }));
    default:
      return [line];
  }
}

/** Heading, test squares, rulers and the key of lines on `width` × `height` mm, its lower left corner at 0, 0. */
export function front(
  width: number,
  height: number,
  heading: Heading,
  how: readonly Phrase[],
  used: ReadonlySet<LayerId>,
): { strokes: Stroke[]; words: Words[]; free: Free } {
  const say = (phrase: Phrase): string => renderPhrase(phrase, heading.tell);
  const strokes: Stroke[] = [];
  const words: Words[] = [
    text(heading.title, { x: 0, y: height - 7 }, 7, true),
    text(
      say(
        beside([heading.size, heading.person ? forPerson(heading.person) : null, t`${called(heading.date)}`]),
      ),
      { x: 0, y: height - 14 },
      4,
    ),
  ];
  const put = (part: { strokes: Stroke[]; words: Words[] }): void => {
    strokes.push(...part.strokes);
    words.push(...part.words);
  };
  put(testSquare({ x: 0, y: height - SQUARES_AT }, 50, SQUARE_WORDS.metric.map(say)));
  put(testSquare({ x: 57, y: height - SQUARES_AT }, 2 * MM_PER.in, SQUARE_WORDS.inches.map(say)));
  put(ruler({ x: width - 1, y: height - 205 }, 200, true));
  put(ruler({ x: 0, y: 1 }, 150, false));

  words.push(text(say(KEY_HEAD), { x: KEY_AT_X, y: height - 29 }, 3.4, true));
  let y = height - 35;
  for (const { id, name, ink } of LAYERS.toReversed()) {
    if (id === 'page' || id === 'labels' || !used.has(id)) continue;
    const looks = sampleOf(id, { x: KEY_AT_X, y: y + 1 });
    for (const { path, filled } of looks) {
      strokes.push({ layer: 'page', path, filled: filled ?? false, ink });
    }
    words.push(text(say(name), { x: KEY_AT_X + 23, y }, 2.9));
    y -= 4.8;
  }

  let under = height - SQUARES_AT - LINES_UNDER;
  linesOf(heading, how).forEach((says, i) => {
    words.push(text(says, { x: 0, y: under }, 3.2, i === 0));
    under -= LINE_MM;
  });
  const free = { at: { x: 0, y: FOOT_MM }, width: width - 14, height: Math.max(20, under - FOOT_MM) };
  return { strokes, words, free };
}

/** Letters that fit beside the upright ruler at the words' size. */
const LINE_LETTERS = 105;

/** A sentence broken between words into lines of at most so many letters. */
function broken(sentence: string, letters: number): string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of sentence.split(/\s+/).filter((w) => w !== '')) {
    if (line !== '' && line.length + 1 + word.length > letters) {
      lines.push(line);
      line = word;
    } else line = line === '' ? word : `${line} ${word}`;
  }
  return line === '' ? lines : [...lines, line];
}

/** The pieces by number, from `at` downward. */
export function pieceList(figures: readonly Figure[], at: Point): Words[] {
  const named = figures
    .filter((f) => f.piece !== undefined)
    .toSorted((a, b) => (a.number ?? 0) - (b.number ?? 0));
  return named.map((f, i) =>
    text(`${f.number ?? ''}  ${f.name}`.trim(), { x: at.x, y: at.y - i * NAME_MM }, 3),
  );
}
