import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';

const folder = fileURLToPath(new URL('.', import.meta.url));
const [name, ...rest] = process.argv.slice(2);
const file = (await import(pathToFileURL(join(folder, `${name}.run.ts`)).href)) as {
  default: (args: string[]) => Promise<void>;
};
await file.default(rest);
