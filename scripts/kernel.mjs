// `npm run kernel`: makes src/layout/search/kernel-bytes.ts of the AssemblyScript in src/layout/search/kernel.
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { ensureInstalled, root } from './ensure.mjs';

export const KERNEL_FILE = join(root, 'src/layout/search/kernel-bytes.ts');

const OPTIONS = [
  '-O3',
  '--noAssert',
  '--runtime',
  'stub',
  '--importMemory',
  '--enable',
  'simd',
  '--enable',
  'nontrapping-f2i',
  '--enable',
  'bulk-memory',
];

/** The file's text as the sources stand now. */
export async function kernelFile() {
  const { main } = await import('assemblyscript/asc');
  const out = 'kernel.wasm';
  let bytes;
  const { error, stderr } = await main(
    ['src/layout/search/kernel/index.ts', '-o', out, ...OPTIONS, '--baseDir', root],
    {
      writeFile(name, contents) {
        if (name.endsWith(out)) bytes = contents;
      },
    },
  );
  if (error || !bytes)
    throw new Error(`The kernel cannot be compiled: ${stderr.toString()}`, { cause: error });
  return `/** src/layout/search/kernel compiled, in base 64: made by \`npm run kernel\`. */
export const KERNEL_BYTES =
  '${Buffer.from(bytes).toString('base64')}';
`;
}

if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href) {
  ensureInstalled();
  writeFileSync(KERNEL_FILE, await kernelFile());
}
