import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { createServer, type Server } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { serveAtOwnAddress } from './own-address.ts';
import { serveFolder } from './serve.ts';

let folder = '';
const servers: Server[] = [];
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'pintrue-own-'));
  writeFileSync(join(folder, 'index.html'), '<title>Pintrue</title>');
});
afterAll(() => {
  for (const server of servers) server.close();
  rmSync(folder, { recursive: true });
});

/** A port on which something answers with that page. */
const stranger = (html: string): Promise<number> =>
  new Promise((done) => {
    const server = createServer((_, response) => response.end(html));
    servers.push(server);
    server.listen(0, '127.0.0.1', () => done((server.address() as { port: number }).port));
  });

describe('the page’s own address', () => {
  it('is the one that runs already', async () => {
    const { server, url } = await serveFolder(folder);
    servers.push(server);
    expect(await serveAtOwnAddress(folder, Number(new URL(url).port))).toEqual({ url, by: 'running' });
  });

  it('is another, and said to be, where another program has the port', async () => {
    const port = await stranger('<title>something else</title>');
    const { url, by } = await serveAtOwnAddress(folder, port);
    expect(by).toBe('elsewhere');
    expect(new URL(url).port).not.toBe(String(port));
    expect(await (await fetch(url)).text()).toBe('<title>Pintrue</title>');
  });
});
