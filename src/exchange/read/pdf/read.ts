import { REFUSAL_WORDS as NO } from '../../words/refusal-table.ts';
import { EVIDENCE_WORDS as SAY } from '../../words/evidence-table.ts';
import { exchangeFinding } from '../../words/words-table.ts';
import { MM_PER } from '../../../garment/index.ts';
import type { Finding } from '../../../garment/index.ts';
import { affineAfter } from '../../drawing/affine.ts';
import type { Affine } from '../../drawing/affine.ts';
import { ReadError, openBudget } from '../../drawing/budget.ts';
import type { Budget, ReadOptions } from '../../drawing/budget.ts';
import type { DrawnLayer, DrawnPage, DrawnText, Drawing } from '../../drawing/drawing.ts';
import { fontsAway } from './fonts-away.ts';
import { lettingGo } from './left-behind.ts';
import { pdfLibrary } from './library.ts';
import type { PdfLibrary } from './library.ts';
import { pageStrokes } from './page.ts';
import { shownStrokes } from './shown.ts';
import type { ClippedLine } from './shown.ts';
import { pageTexts } from './text.ts';
import { pageTurns } from './turned.ts';
import type { PageTurn } from './turned.ts';

const MM_PER_POINT = MM_PER.in / 72;

/**
 * Reads the lines and words of a PDF. Nothing in the file is run and nothing it points to is fetched.
 * Throws ReadError: `empty`, `not-this-format`, `damaged`, `locked`, `only-images`, `no-lines`, `too-large`, `too-deep`, `too-slow`, `cancelled`.
 */
export async function readPdf(bytes: Uint8Array, options: ReadOptions = {}): Promise<Drawing> {
  const budget = openBudget(bytes.length, options);
  const { name } = budget;
  if (!startsAsPdf(bytes)) throw new ReadError('not-this-format', name, NO['pdf-start']({ file: name }));
  const library = await pdfLibrary();
  return lettingGo(() => readWith(library, bytes, budget));
}

async function readWith(library: PdfLibrary, bytes: Uint8Array, budget: Budget): Promise<Drawing> {
  const task = library.getDocument({
    // The library takes the buffer over, so it gets its own.
    data: fontsAway(bytes),
    verbosity: 0,
    isEvalSupported: false,
    disableFontFace: true,
    useSystemFonts: false,
    useWorkerFetch: false,
    enableXfa: false,
    stopAtErrors: false,
    // Pictures are not decoded: a scan has nothing for this reader, and one picture can fill the memory.
    maxImageSize: 1,
  });
  try {
    return await inTime(readPages(library, await inTime(task.promise, budget), bytes, budget), budget);
  } catch (error) {
    throw asReadError(error, bytes, budget.name);
  } finally {
    await task.destroy().catch(() => undefined);
  }
}

type PdfDocument = Awaited<ReturnType<PdfLibrary['getDocument']>['promise']>;

async function readPages(
  library: PdfLibrary,
  document: PdfDocument,
  bytes: Uint8Array,
  budget: Budget,
): Promise<Drawing> {
  const { name } = budget;
  budget.spend('pages', document.numPages);
  const optional = await document.getOptionalContentConfig();
  const groups = new Map<string, DrawnLayer>();
  for (const [id, group] of optional as unknown as Iterable<
    [string, { name?: string | null; visible: boolean }]
  >) {
    groups.set(id, { name: String(group.name ?? id), visible: group.visible });
  }
  const layerName = (properties: unknown): string | null => {
    const { id, ids } = (properties ?? {}) as { id?: string; ids?: readonly string[] };
    const known = [id, ...(Array.isArray(ids) ? ids : [])].find(
      (key) => key !== undefined && groups.has(key),
    );
    return known === undefined ? null : groups.get(known)!.name;
  };

  const pages: DrawnPage[] = [];
  const lines: ClippedLine[] = [];
  const texts: DrawnText[] = [];
  const findings: Finding[] = [];
  const { turns, against } = await turnsOf(document, budget);
  if (against.length > 0) {
    findings.push(exchangeFinding('pages-turned', 'note', {}, { pages: against.map((index) => index + 1) }));
  }
  for (let index = 0; index < document.numPages; index++) {
    budget.look();
    budget.report('pages', index, document.numPages);
    try {
      const page = await document.getPage(index + 1);
      const sheet = pageSheet(page.view, turns[index]!, page.userUnit);
      const steps = await page.getOperatorList({ annotationMode: library.AnnotationMode.DISABLE });
      const content = await page.getTextContent({ includeMarkedContent: true });
      pages.push({ number: index + 1, width: sheet.width, height: sheet.height });
      for (const line of pageStrokes(library, steps, { index, ...sheet }, layerName, budget))
        lines.push(line);
      for (const text of pageTexts(content.items, index, sheet.start, layerName, budget)) texts.push(text);
      page.cleanup();
    } catch (error) {
      if (error instanceof ReadError) throw error;
      pages.length = index;
      pages.push({ number: index + 1, width: 0, height: 0 });
      findings.push(
        exchangeFinding(
          'page-damaged',
          'warning',
          {},
          { page: index + 1, file: name },
          { amount: index + 1 },
        ),
      );
    }
  }
  budget.report('pages', document.numPages, document.numPages);
  const strokes = shownStrokes(lines, budget);
  if (strokes.length === 0) {
    if (findings.length === pages.length)
      throw new ReadError('damaged', name, NO['pdf-no-page']({ file: name }));
    if (holdsPictures(bytes)) {
      throw new ReadError('only-images', name, NO['pdf-pictures']({ file: name }));
    }
    throw new ReadError('no-lines', name, NO['no-drawn-lines']({ file: name }));
  }
  return {
    format: 'pdf',
    name,
    pages,
    strokes,
    texts,
    layers: [...groups.values()],
    unitsFrom: SAY['units-of-pdf'](),
    findings,
  };
}

/** Looks at all pages before any is read: how one is turned depends on the others. */
async function turnsOf(document: PdfDocument, budget: Budget): Promise<ReturnType<typeof pageTurns>> {
  const pages: (PageTurn | null)[] = [];
  for (let index = 0; index < document.numPages; index++) {
    budget.look();
    // A page that cannot be had fails again, and is told, when it is read.
    pages.push(await document.getPage(index + 1).catch(() => null));
  }
  return pageTurns(pages);
}

/** Page space (points, turned pages, own units) to mm with the origin at the lower left as seen. */
function pageSheet(
  view: readonly number[],
  rotate: number,
  userUnit: number,
): { start: Affine; width: number; height: number } {
  const [x0, y0, x1, y1] = view as [number, number, number, number];
  const unit = MM_PER_POINT * (userUnit > 0 ? userUnit : 1);
  const w = (x1 - x0) * unit;
  const h = (y1 - y0) * unit;
  const toMm: Affine = [unit, 0, 0, unit, -x0 * unit, -y0 * unit];
  switch (rotate) {
    case 90:
      return { start: affineAfter([0, -1, 1, 0, 0, w], toMm), width: h, height: w };
    case 180:
      return { start: affineAfter([-1, 0, 0, -1, w, h], toMm), width: w, height: h };
    case 270:
      return { start: affineAfter([0, 1, -1, 0, h, 0], toMm), width: h, height: w };
    default:
      return { start: toMm, width: w, height: h };
  }
}

/** The header may follow up to a kilobyte of other bytes (ISO 32000-1, annex H.3, implementation note 13; memory). */
function startsAsPdf(bytes: Uint8Array): boolean {
  return new TextDecoder('latin1').decode(bytes.subarray(0, 1024)).includes('%PDF-');
}

/** The mark of the end stands in the last kilobyte (same place, note 18; memory). */
function endsAsPdf(bytes: Uint8Array): boolean {
  return new TextDecoder('latin1').decode(bytes.subarray(-1024)).includes('%%EOF');
}

/** Picture streams keep their dictionary readable even in compressed files. */
function holdsPictures(bytes: Uint8Array): boolean {
  return /\/Subtype\s*\/Image\b|\bBI\s[\s\S]{0,200}?\bID\s/.test(new TextDecoder('latin1').decode(bytes));
}

/** Gives up waiting when the time is used up or the person cancels. */
async function inTime<T>(work: Promise<T>, budget: Budget): Promise<T> {
  let timer: ReturnType<typeof setInterval> | undefined;
  const watch = new Promise<never>((_, reject) => {
    timer = setInterval(() => {
      try {
        budget.look();
      } catch (error) {
        reject(error);
      }
    }, 50);
  });
  try {
    return await Promise.race([work, watch]);
  } finally {
    clearInterval(timer);
    work.catch(() => undefined);
  }
}

function asReadError(error: unknown, bytes: Uint8Array, name: string): ReadError {
  if (error instanceof ReadError) return error;
  const kind = error instanceof Error ? error.name : '';
  if (kind === 'PasswordException') {
    return new ReadError('locked', name, NO['pdf-locked']({ file: name }));
  }
  // What the library says of it helps nobody who sews, and is in one language.
  return new ReadError('damaged', name, NO['pdf-damaged']({ file: name, cut: !endsAsPdf(bytes) }));
}
