import { randomUUID } from 'node:crypto';
import { access, readFile, rename, rm, stat, writeFile } from 'node:fs/promises';
import { availableParallelism } from 'node:os';
import { InputError } from '../garment/index.ts';
import type { Io } from './io.ts';
import { nodeHands, serveHand } from './lay-hands.ts';
import { readApart, serveReading } from './read-apart.ts';
import { runCli } from './run.ts';
import { fileProblem } from './usage-word-table.ts';

/** No pattern or photograph is larger; a slip of the hand may well be. Bytes. */
const LARGEST_FILE = 300_000_000;

function fileError(path: string, error: unknown, doing: 'read' | 'write'): InputError {
  const code = (error as NodeJS.ErrnoException).code ?? '';
  return new InputError(fileProblem('file', { file: path }, { doing, code }));
}

async function read(path: string): Promise<Uint8Array> {
  try {
    const { size } = await stat(path);
    if (size > LARGEST_FILE)
      throw new InputError(fileProblem('too-large', { file: path }, { most: LARGEST_FILE }));
    const bytes = await readFile(path);
    // Plain bytes: some readers refuse Node's own kind.
    return new Uint8Array(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  } catch (error) {
    throw error instanceof InputError ? error : fileError(path, error, 'read');
  }
}

const besideOf = (path: string): string => `${path}.${randomUUID().slice(0, 8)}.part`;

/** Written beside its place and then moved there, so that a half-written file is never left. */
async function write(path: string, content: string | Uint8Array): Promise<void> {
  const beside = besideOf(path);
  try {
    await writeFile(beside, content);
    await rename(beside, path);
  } catch (error) {
    await rm(beside, { force: true });
    throw fileError(path, error, 'write');
  }
}

/** Tried with an empty file beside its place: what is there already stays. */
async function mustBeWritable(path: string): Promise<void> {
  const there = await stat(path).catch(() => null);
  if (there?.isDirectory()) throw fileError(path, { code: 'EISDIR' }, 'write');
  const beside = besideOf(path);
  try {
    await writeFile(beside, '');
  } catch (error) {
    throw fileError(path, error, 'write');
  } finally {
    await rm(beside, { force: true });
  }
}

const io: Io = {
  readFile: read,
  writeFile: write,
  mustBeWritable,
  layHands: () => nodeHands(new URL(import.meta.url), availableParallelism()),
  readApart: (job) => readApart(new URL(import.meta.url), job),
  exists: (path) =>
    access(path).then(
      () => true,
      () => false,
    ),
  out: (text) => process.stdout.write(text),
  err: (text) => process.stderr.write(text),
  today: () => new Date().toISOString().slice(0, 10),
  now: () => performance.now(),
};

if (!serveReading() && !serveHand()) {
  // A reader that closes the pipe early (`| head`) has what it wanted.
  process.stdout.on('error', (error: NodeJS.ErrnoException) => process.exit(error.code === 'EPIPE' ? 0 : 70));
  process.exitCode = await runCli(process.argv.slice(2), io);
}
