/** Names of the errors that the PDF library's parser makes; its classes are not given out. */
const OWN = new Set([
  'FormatError',
  'InvalidPDFException',
  'MissingDataException',
  'ParserEOFException',
  'UnknownErrorException',
  'XRefEntryException',
  'XRefParseException',
]);

/** The one process of Node as far as it is used here; a browser has none, and only logs what nobody waited for. */
interface Host {
  on(event: 'unhandledRejection', listener: (reason: unknown) => void): unknown;
  off(event: 'unhandledRejection', listener: (reason: unknown) => void): unknown;
  listenerCount(event: 'unhandledRejection'): number;
}

const host = (): Host | undefined => {
  const { process } = globalThis as { process?: Partial<Host> };
  return typeof process?.on === 'function' && typeof process.off === 'function'
    ? (process as Host)
    : undefined;
};

const isLibrarys = (reason: unknown): boolean =>
  reason instanceof Error && (OWN.has(reason.name) || /pdf\.worker/.test(reason.stack ?? ''));

function hear(reason: unknown): void {
  if (isLibrarys(reason)) return;
  // Not ours to swallow: with nobody else listening it ends the process, as it would have.
  if (host()?.listenerCount('unhandledRejection') === 1) throw reason;
}

let readers = 0;

/**
 * Does the work of one reader of PDFs. The library fetches the other pages ahead and, in a damaged file, leaves a failed fetch that nobody waits for (a
 * promise in a cache of its own); in Node that would end the process of whoever reads the file. While a reader is at work such a failure of the
 * library's own is let go: the page it belongs to fails again, and is told, when it is asked for.
 */
export async function lettingGo<T>(work: () => Promise<T>): Promise<T> {
  if (readers++ === 0) host()?.on('unhandledRejection', hear);
  try {
    return await work();
  } finally {
    if (--readers === 0) host()?.off('unhandledRejection', hear);
  }
}
