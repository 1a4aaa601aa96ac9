import { t, type Phrase } from '../garment/index.ts';

/** The kinds of line on paper. Each is a layer of its own in PDF and SVG, so that it can be switched off before printing. */
export type LayerId =
  | 'cutting'
  | 'stitching'
  | 'fold'
  | 'notches'
  | 'grain'
  | 'levels'
  | 'adjust'
  | 'inner'
  | 'marks'
  | 'nest'
  | 'labels'
  | 'page';

/** How a line is drawn: width and dash lengths in mm, grey from 0 (black) to 1 (white). */
export interface Ink {
  readonly width: number;
  readonly dash: readonly number[];
  readonly grey: number;
  /** Dashes of length 0 are dots; they need round ends. */
  readonly round?: boolean;
}

export interface Layer {
  readonly id: LayerId;
  /** As the layer list and the key on the first page call it. */
  readonly name: Phrase;
  readonly ink: Ink;
}

/**
 * All layers in drawing order, the faintest first. Told apart by weight and dash alone, since most home printers print black;
 * weights are a multiple of 0.1 mm apart, the least a home printer keeps apart for sure.
 */
export const LAYERS: readonly Layer[] = [
  { id: 'nest', name: t`Other sizes`, ink: { width: 0.18, dash: [], grey: 0.55 } },
  { id: 'levels', name: t`Levels`, ink: { width: 0.35, dash: [0, 1.4], grey: 0, round: true } },
  { id: 'adjust', name: t`Lengthen or shorten here`, ink: { width: 0.2, dash: [], grey: 0 } },
  { id: 'inner', name: t`Inner lines`, ink: { width: 0.25, dash: [1.5, 1.5], grey: 0 } },
  { id: 'stitching', name: t`Stitching line`, ink: { width: 0.3, dash: [4, 2], grey: 0 } },
  { id: 'cutting', name: t`Cutting line`, ink: { width: 0.6, dash: [], grey: 0 } },
  { id: 'fold', name: t`Place on the fold`, ink: { width: 0.5, dash: [10, 2.5, 1.5, 2.5], grey: 0 } },
  { id: 'notches', name: t`Notches`, ink: { width: 0.5, dash: [], grey: 0 } },
  { id: 'grain', name: t`Grainline`, ink: { width: 0.35, dash: [], grey: 0 } },
  { id: 'marks', name: t`Marks`, ink: { width: 0.35, dash: [], grey: 0 } },
  { id: 'labels', name: t`Words`, ink: { width: 0.2, dash: [], grey: 0 } },
  { id: 'page', name: t`Page: trim, match marks, test squares`, ink: { width: 0.25, dash: [], grey: 0.35 } },
];

const BY_ID = new Map(LAYERS.map((l) => [l.id, l]));

/** The layer of that id. */
export const layerOf = (id: LayerId): Layer => BY_ID.get(id)!;

/** Dashes of the other sizes, so that a nest can be told apart without colour; repeats after ten. */
export const NEST_DASHES: readonly (readonly number[])[] = [
  [],
  [6, 1.5],
  [3, 1.5],
  [1.5, 1.5],
  [8, 1.5, 1.5, 1.5],
  [5, 1.2, 1.2, 1.2, 1.2, 1.2],
  [0.8, 1.6],
  [10, 3],
  [3, 1, 1, 1],
  [2, 3],
];
