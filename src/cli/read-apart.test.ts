// Threads that misbehave as a damaged file might make a reader do: they never end, fill the memory, or fail where nobody waits.
import { describe, expect, it } from 'vitest';
import { ReadError } from '../exchange/index.ts';
import { t } from '../garment/index.ts';
import { readApart } from './read-apart.ts';

const thread = (code: string): URL => new URL(`data:text/javascript,${encodeURIComponent(code)}`);
const job = { bytes: new Uint8Array([1]), name: 'bad.pdf' };

describe('a reader in a thread of its own', () => {
  it.each([
    ['never ends', 'for (;;);', 'too-slow'],
    [
      'fails where nobody waits',
      'Promise.reject(new Error("odd number")); setInterval(() => 0, 1000);',
      'damaged',
    ],
    ['fills the memory', 'const all = []; for (;;) all.push(new Array(1e5).fill({}));', 'too-large'],
  ] as const)('that %s is given up and said', { timeout: 60_000 }, async (_, code, problem) => {
    const time = problem === 'too-slow' ? 200 : 50_000;
    const refused = await readApart(thread(code), job, { time, megabytes: 60 }).catch(
      (error: unknown) => error,
    );
    expect(refused).toBeInstanceOf(ReadError);
    expect((refused as ReadError).code).toBe(problem);
    expect((refused as ReadError).message).toContain('bad.pdf');
  });

  it('hands over what it says', async () => {
    const says = (told: object): URL =>
      thread(
        `import { parentPort } from 'node:worker_threads'; parentPort.postMessage(${JSON.stringify(told)});`,
      );
    await expect(readApart(says({ kind: 'read', proposal: { name: 'x' } }), job)).resolves.toEqual({
      name: 'x',
    });
    await expect(readApart(says({ kind: 'dxf', line: 7, what: t`no number` }), job)).rejects.toMatchObject({
      name: 'DxfError',
      line: 7,
      message: 'In line 7: no number',
    });
    await expect(
      readApart(says({ kind: 'refused', code: 'locked', where: 'a', phrase: t`m` }), job),
    ).rejects.toMatchObject({ code: 'locked', message: 'm' });
  });
});
