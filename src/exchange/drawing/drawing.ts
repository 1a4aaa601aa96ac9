import { boxAround, pointsBox } from '../../geometry/index.ts';
import type { Box, Path, Point } from '../../geometry/index.ts';
import type { Finding, Phrase } from '../../garment/index.ts';

/** What a file itself says a line belongs to; only formats that can hold it (DXF blocks, our own SVG) fill it in. */
export interface Belongs {
  readonly piece?: string;
  readonly size?: string;
  /** The id of an edge, line, mark or notch, as `kind:id`; of an outline that knows its corners, `corners:` and which of its cubics begin at one. */
  readonly part?: string;
}

const CORNERS = 'corners:';

/** What a closed outline says of its corners: the numbers of the cubics (0 the first) that begin at one. */
export const cornersPart = (cubics: readonly number[]): string => CORNERS + cubics.join(' ');

/** The corners that an outline says of itself; null where it says none. */
export const cornersInPart = (part: string | undefined): readonly number[] | null =>
  part?.startsWith(CORNERS) ? part.slice(CORNERS.length).split(' ').map(Number) : null;

/** One drawn line in mm, y up from the lower left corner of its page. */
export interface Stroke {
  /** Index into `Drawing.pages`. */
  readonly page: number;
  readonly path: Path;
  readonly closed: boolean;
  /** `#rrggbb`, of the line; of the filling where only that is painted. */
  readonly colour: string;
  /** mm; 0 is a hairline. */
  readonly width: number;
  /** Dash and gap lengths in mm, empty for an unbroken line. */
  readonly dash: readonly number[];
  /** Name of the layer, empty where the file has none. */
  readonly layer: string;
  readonly paint: 'line' | 'area' | 'both';
  readonly belongs?: Belongs;
}

export interface DrawnText {
  readonly page: number;
  readonly text: string;
  /** Start of its base line. */
  readonly at: Point;
  /** Height of its letters' body, mm. */
  readonly size: number;
  /** Radians, counter-clockwise from reading level. */
  readonly angle: number;
  /** Length of the line of text, mm; 0 where unknown. */
  readonly width: number;
  readonly layer: string;
  readonly belongs?: Belongs;
  /** Its letters are drawn as shapes or single strokes, and were read from those. */
  readonly fromShape?: true;
}

export interface DrawnPage {
  /** As counted by the reader, from 1. */
  readonly number: number;
  readonly width: number;
  readonly height: number;
}

export interface DrawnLayer {
  readonly name: string;
  /** Whether the file shows it when opened. */
  readonly visible: boolean;
}

/** Any file, neutrally: what is drawn on which page, nothing yet understood. */
export interface Drawing {
  readonly format: 'pdf' | 'svg' | 'dxf' | 'photo';
  readonly name: string;
  readonly pages: readonly DrawnPage[];
  readonly strokes: readonly Stroke[];
  readonly texts: readonly DrawnText[];
  readonly layers: readonly DrawnLayer[];
  /** Our own files only: what the pattern knows beyond its lines, as read, not yet checked. */
  readonly structure?: unknown;
  /** In words: where the millimetres come from. */
  readonly unitsFrom: Phrase;
  readonly findings: readonly Finding[];
}

export const boxInside = (inner: Box, outer: Box): boolean =>
  inner.minX >= outer.minX &&
  inner.maxX <= outer.maxX &&
  inner.minY >= outer.minY &&
  inner.maxY <= outer.maxY;

/** Bounds of all strokes of one page (or of all pages on top of one another); a point at the origin when there are none. */
export function drawingBox(drawing: Drawing, page?: number): Box {
  const seen = drawing.strokes.filter((stroke) => page === undefined || stroke.page === page);
  return seen.length === 0
    ? { minX: 0, minY: 0, maxX: 0, maxY: 0 }
    : boxAround(seen.map((stroke) => pointsBox(stroke.path)));
}
