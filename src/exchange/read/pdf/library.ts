/**
 * The one place that knows the PDF library. Loaded only when a PDF is read, so that a browser fetches it lazily.
 * The parser runs on the calling thread (a face that must stay responsive calls the reader from its own worker).
 */
import type * as Pdf from 'pdfjs-dist/legacy/build/pdf.mjs';

/** The library as loaded. */
export type PdfLibrary = typeof Pdf;

let loading: Promise<PdfLibrary> | undefined;

export function pdfLibrary(): Promise<PdfLibrary> {
  loading ??= load();
  return loading;
}

async function load(): Promise<PdfLibrary> {
  // @ts-expect-error -- the library ships no types for its parser half
  const parser: unknown = await import('pdfjs-dist/legacy/build/pdf.worker.mjs');
  // Handing it over keeps the library from starting a thread of its own from an address of its choice.
  (globalThis as { pdfjsWorker?: unknown }).pdfjsWorker = parser;
  return import('pdfjs-dist/legacy/build/pdf.mjs');
}
