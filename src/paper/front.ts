import { called, MM_PER, renderPhrase, t, type Phrase, type Tell } from '../garment/index.ts';
import { linePath } from '../geometry/index.ts';
import type { Path, Point } from '../geometry/index.ts';
import { filledHead } from './arrow.ts';
import { circlePath } from './circle.ts';
import type { Figure, Stroke, Words } from './drawing.ts';
import { LAYERS } from './ink.ts';
import type { LayerId } from './ink.ts';
import { beside, forPerson, KEY_HEAD, longRuler, squareWords } from './printed-words.ts';
import { CENTIMETRES, INCHES, ruler, testSquare } from './ruler.ts';

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

/** Room for the rulers and squares, beside one another in full size where the paper allows; nothing smaller can hold a 200 mm ruler. */
const NARROW_MM = 190;
const WIDE_MM = 288;
const LEAST_HEIGHT_MM = 215;
/** Test squares: of these a tape reads half a hundredth, of half of them hardly (trade.md 7.7). */
const SQUARES = {
  metric: { side: 100, unit: 'mm' },
  inches: { side: 4 * MM_PER.in, unit: 'in' },
} as const;
/** From the head of the page down to the tops of the squares, mm. */
const SQUARES_FROM = 20;
/** Between squares and key, and down to the key's first line, mm. */
const BESIDE_MM = 6;
const KEY_UNDER = 9;
/** From the tops down to what must be read: under squares in full size, and under halved ones with the key beside them. */
const LINES_FROM = { full: 116, halved: 65 } as const;
/** The least that a map of tiles needs to be read, mm. */
const MAP_MM = 60;

/** How wide the front is on paper with so much room, mm. */
export const frontWidth = (room: number): number => (room >= WIDE_MM ? WIDE_MM : NARROW_MM);
/** From line to line of what must be read. */
const LINE_MM = 4.9;
/** From name to name in the list of pieces. */
const NAME_MM = 4.6;
/** The ruler along the foot. */
const FOOT_MM = 12;

/** How the front reads, line by line: what to measure, what to mind. */
const linesOf = ({ tell, notes }: Heading, how: readonly Phrase[]): readonly string[] =>
  [...how, ...(notes ?? [])].flatMap((note) => broken(renderPhrase(note, tell), LINE_LETTERS));

/** Height of a front that has room for squares in full size, all its lines and a list of so many pieces, mm. */
export const frontHeight = (heading: Heading, how: readonly Phrase[], pieces: number): number =>
  Math.max(LEAST_HEIGHT_MM, heightFor(linesOf(heading, how).length, (pieces + 1) * NAME_MM));

const heightFor = (lines: number, free: number): number =>
  SQUARES_FROM + LINES_FROM.full + lines * LINE_MM + free + FOOT_MM;

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

/** Heading, test squares, rulers and the key of lines on `width` × `height` mm, its lower left corner at 0, 0, and room for a list of so many pieces. */
export function front(
  width: number,
  height: number,
  heading: Heading,
  how: readonly Phrase[],
  used: ReadonlySet<LayerId>,
  pieces: number,
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
  const lines = linesOf(heading, how);
  const inches = heading.tell.unit === 'in';
  const [own, other] = inches ? [SQUARES.inches, SQUARES.metric] : [SQUARES.metric, SQUARES.inches];
  const wide = width >= WIDE_MM;
  const full = wide || heightFor(lines.length, Math.max(MAP_MM, (pieces + 1) * NAME_MM)) <= height;
  const top = height - SQUARES_FROM;
  let right = 0;
  for (const [square, share] of [
    [own, full ? 1 : 0.5],
    [other, wide ? 1 : 0.5],
  ] as const) {
    const side = square.side * share;
    put(testSquare({ x: right, y: top - side }, side, squareWords(side, square.unit).map(say)));
    right += side + BESIDE_MM;
  }
  const scale = inches ? INCHES : CENTIMETRES;
  put(ruler({ x: width - 1, y: height - 205 }, longRuler(heading.tell), scale, true, say));
  put(ruler({ x: 0, y: 1 }, longRuler(heading.tell) * 0.75, scale, false, say));

  // The key stands beside the squares, or under the second where that is the smaller one.
  const under2 = full && !wide;
  const keyX = under2 ? own.side + BESIDE_MM : right;
  let y = top - KEY_UNDER - (under2 ? other.side / 2 : 0);
  words.push(text(say(KEY_HEAD), { x: keyX, y }, 3.4, true));
  y -= 6;
  for (const { id, name, ink } of LAYERS.toReversed()) {
    if (id === 'page' || id === 'labels' || !used.has(id)) continue;
    const looks = sampleOf(id, { x: keyX, y: y + 1 });
    for (const { path, filled } of looks) {
      strokes.push({ layer: 'page', path, filled: filled ?? false, ink });
    }
    words.push(text(say(name), { x: keyX + 23, y }, 2.9));
    y -= 4.8;
  }

  let under = top - (full ? LINES_FROM.full : LINES_FROM.halved);
  lines.forEach((says, i) => {
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
