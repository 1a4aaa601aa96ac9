import { mkdtempSync, mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { request } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { serveFolder } from './serve.ts';

let base = '';
let port = 0;
let close = (): void => undefined;

beforeAll(async () => {
  base = mkdtempSync(join(tmpdir(), 'pintrue-host-'));
  mkdirSync(join(base, 'site', 'assets'), { recursive: true });
  writeFileSync(join(base, 'secret.txt'), 'not for the page');
  writeFileSync(join(base, 'site', 'index.html'), '<h1>here</h1>');
  writeFileSync(join(base, 'site', 'assets', 'a.js'), 'export {};');
  const { server, url } = await serveFolder(join(base, 'site'));
  port = Number(new URL(url).port);
  close = () => void server.close();
});
afterAll(() => {
  close();
  rmSync(base, { recursive: true });
});

function get(
  path: string,
  headers: Record<string, string> = {},
  method = 'GET',
): Promise<{ code: number; body: string; headers: Record<string, unknown> }> {
  return new Promise((done, failed) => {
    const r = request({ host: '127.0.0.1', port, path, method, headers }, (response) => {
      let body = '';
      response.on('data', (part: Buffer) => (body += part.toString()));
      response.on('end', () => done({ code: response.statusCode!, body, headers: response.headers }));
    });
    r.on('error', failed);
    r.end();
  });
}

describe('the local server', () => {
  it('gives the page with a policy that lets it load only its own files', async () => {
    const page = await get('/');
    expect(page.code).toBe(200);
    expect(page.body).toBe('<h1>here</h1>');
    expect(page.headers['content-security-policy']).toContain("default-src 'none'");
    expect((await get('/assets/a.js')).headers['content-type']).toContain('text/javascript');
  });

  it('never leaves its folder', async () => {
    for (const path of [
      '/../secret.txt',
      '/%2e%2e/secret.txt',
      '/assets/..%2f..%2fsecret.txt',
      '/%00',
      '/%zz',
      '//../secret.txt',
    ]) {
      const { code, body } = await get(path);
      expect([path, code === 200 ? body : 'refused']).toEqual([path, 'refused']);
    }
  });

  it('answers this machine only, and only to reading', async () => {
    expect((await get('/', { host: 'elsewhere.example' })).code).toBe(403);
    expect((await get('/', {}, 'POST')).code).toBe(405);
    expect((await get('/nothing')).code).toBe(404);
  });
});
