import { serveFolder } from './serve.ts';

/** A browser keeps what was entered by address, port included: at another port it would all seem lost. Any number does, so long as it stays. */
const OWN_PORT = 47_613;

/** Where the page is served: by this process; by one that runs already; or, the port being another program's, at one where nothing kept is seen. */
export interface Served {
  readonly url: string;
  readonly by: 'us' | 'running' | 'elsewhere';
}

const isTaken = (error: unknown): boolean => (error as NodeJS.ErrnoException).code === 'EADDRINUSE';

/** Whether our page answers at the address. */
async function isOurs(url: string): Promise<boolean> {
  try {
    const answer = await fetch(url, { signal: AbortSignal.timeout(2000) });
    return (await answer.text()).includes('<title>Pintrue</title>');
  } catch {
    return false;
  }
}

/** Serves the folder always at the same address. Errors: those of listening, but for a taken port. */
export async function serveAtOwnAddress(folder: string, port = OWN_PORT): Promise<Served> {
  try {
    return { url: (await serveFolder(folder, port)).url, by: 'us' };
  } catch (error) {
    if (!isTaken(error)) throw error;
  }
  const url = `http://127.0.0.1:${port}/`;
  if (await isOurs(url)) return { url, by: 'running' };
  return { url: (await serveFolder(folder)).url, by: 'elsewhere' };
}
