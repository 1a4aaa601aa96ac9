import { paperFinding, paperProblem } from './words-table.ts';
import { sewingOrder } from '../cut/index.ts';
import type { Finding, Garment, PieceId } from '../garment/index.ts';
import { BORDER_MM, arrange, withBorder } from './arrange.ts';
import type { Figure, Page, Sheet } from './drawing.ts';
import { drawFigure } from './figure.ts';
import type { FigureChoices } from './figure.ts';
import { LONGEST_PAGE_MM } from './paper-size.ts';
import type { Paper } from './paper-size.ts';
import { sheetForTiles, tile } from './tile.ts';
import { fitsWhole, roomOn, wholePages } from './whole.ts';

export interface SheetChoices extends FigureChoices {
  /** Only these pieces; all when absent. */
  readonly pieces?: readonly PieceId[];
}

/** The pieces wanted, each drawn in its own place. Throws an InputError for a piece the garment does not have, or none at all. */
export function drawFigures(garment: Garment, choices: SheetChoices): Figure[] {
  const missing = choices.pieces?.find((id) => !garment.pieces.some((p) => p.id === id));
  if (missing !== undefined) {
    throw paperProblem('piece-unknown', 'pieces', {
      piece: missing,
      known: garment.pieces.map((p) => p.id),
    });
  }
  const wanted = garment.pieces.filter((p) => !choices.pieces || choices.pieces.includes(p.id));
  if (wanted.length === 0) throw paperProblem('nothing-to-print', 'pieces', {});
  const order = sewingOrder(garment.seams);
  return wanted.map((piece) => drawFigure(piece, order, choices));
}

/** The pieces side by side on endless paper `width` mm wide (the 36 in roll if not said), or as wide as the widest piece needs. */
export function sheet(garment: Garment, choices: SheetChoices, width = 894.4): Sheet {
  const figures = drawFigures(garment, choices);
  const widest = Math.max(...figures.map((f) => f.box.maxX - f.box.minX));
  const bare = arrange(figures, Math.max(width, widest), Infinity)[0]!;
  return withBorder(bare, BORDER_MM);
}

/**
 * The pages to print on a paper: whole pieces where all of them fit on single pages, tiles otherwise. What a preview draws and `pdf` writes.
 * The finding `tiled` says that a piece is too large for one page of a roll or large sheet.
 */
export function printPages(
  garment: Garment,
  choices: SheetChoices,
  paper: Paper,
): { pages: Page[]; findings: Finding[] } {
  const figures = drawFigures(garment, choices);
  if (fitsWhole(figures, paper, choices)) return { pages: wholePages(figures, paper, choices), findings: [] };
  const cut = { width: paper.width, height: paper.height ?? LONGEST_PAGE_MM };
  const pages = tile(sheetForTiles(figures, cut), cut, choices);
  const room = roomOn(paper);
  const large = figures.filter(
    (f) => f.box.maxX - f.box.minX > room.width || f.box.maxY - f.box.minY > room.height,
  );
  const findings =
    paper.height !== null && paper.height < 800 ? [] : large.map((f): Finding => tooLarge(f, paper));
  return { pages, findings };
}

const tooLarge = (figure: Figure, paper: Paper): Finding =>
  paperFinding('tiled', 'note', figure.piece === undefined ? {} : { piece: figure.piece }, {
    piece: figure.name,
    paper: paper.name,
  });
