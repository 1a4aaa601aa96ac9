import { createServer, type Server } from 'node:http';
import { readFile, stat } from 'node:fs/promises';
import { extname, join, normalize, sep } from 'node:path';

const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.woff2': 'font/woff2',
  '.json': 'application/json',
  '.webmanifest': 'application/manifest+json',
};

/** The page may load its own files and nothing else; said by the server too, for browsers that read only headers. */
const POLICY =
  "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; style-src 'self' 'unsafe-inline'; img-src 'self' blob: data:; font-src 'self'; connect-src 'self' blob:; worker-src 'self' blob:; manifest-src 'self'; frame-src blob:; base-uri 'none'; form-action 'none'; frame-ancestors 'none'";

/** The file for a request path, or null where it leads out of the folder or to nothing. */
async function fileFor(folder: string, path: string): Promise<string | null> {
  let name: string;
  try {
    name = decodeURIComponent(path);
  } catch {
    return null;
  }
  if (name.includes('\0')) return null;
  const full = normalize(join(folder, name.endsWith('/') ? `${name}index.html` : name));
  if (full !== folder && !full.startsWith(folder + sep)) return null;
  const info = await stat(full).catch(() => null);
  return info?.isFile() ? full : null;
}

/**
 * Serves a folder of static files to this machine only: it listens on the loopback address and answers no other name,
 * so that a page elsewhere cannot reach it by a name that points here. `port` 0 takes a free one.
 */
export async function serveFolder(folder: string, port = 0): Promise<{ server: Server; url: string }> {
  const root = normalize(folder);
  const server = createServer((request, response) => {
    const host = (request.headers.host ?? '').replace(/:\d+$/, '');
    const plain = (code: number, text: string): void => {
      response.writeHead(code, { 'content-type': 'text/plain; charset=utf-8' }).end(text);
    };
    if (!['127.0.0.1', 'localhost', '[::1]'].includes(host))
      return plain(403, 'This server answers this machine only.');
    if (request.method !== 'GET' && request.method !== 'HEAD')
      return plain(405, 'Only reading is possible here.');
    const path = (request.url ?? '/').split(/[?#]/)[0]!;
    fileFor(root, path)
      .then(async (file) => {
        if (!file) return plain(404, 'There is no such page.');
        const body = await readFile(file);
        response.writeHead(200, {
          'content-type': TYPES[extname(file)] ?? 'application/octet-stream',
          'content-length': body.length,
          'cache-control': path.includes('/assets/') ? 'public, max-age=31536000, immutable' : 'no-cache',
          'content-security-policy': POLICY,
          'x-content-type-options': 'nosniff',
          'referrer-policy': 'no-referrer',
        });
        response.end(request.method === 'HEAD' ? undefined : body);
      })
      .catch(() => plain(500, 'That file could not be read.'));
    return undefined;
  });
  await new Promise<void>((listening, failed) => {
    server.once('error', failed);
    server.listen(port, '127.0.0.1', listening);
  });
  const address = server.address();
  if (address === null || typeof address === 'string') throw new Error('The server has no port.');
  return { server, url: `http://127.0.0.1:${address.port}/` };
}
