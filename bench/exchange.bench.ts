import { assemble, findAssembly, readPdf, recognise } from '../src/exchange/index.ts';
import { tiledPdf } from '../src/exchange/tiled.test-case.ts';
import { sample } from '../src/samples/index.ts';
import type { Case } from './case.ts';

/** The stated limit for reading and putting together, ms, and for memory, MB. */
const LIMIT_MS = 5000;
const LIMIT_MB = 500;

interface State {
  readonly bytes: Uint8Array;
  readonly pages: number;
}

const setup = async (): Promise<State> => tiledPdf(sample('stage-bodice'), 0, 1400);

const cases: Case[] = [
  {
    name: 'read and put together a tiled A4 PDF of ten nested sizes',
    setup,
    run: async (state: State) => {
      const drawing = await readPdf(state.bytes, { name: 'tiled.pdf' });
      return assemble(drawing, findAssembly(drawing));
    },
    note: (ms: number, state: State) =>
      `${state.pages} pages; ${(ms / LIMIT_MS).toFixed(2)} of the limit; memory ${Math.round(process.memoryUsage().rss / 1e6)} of ${LIMIT_MB} MB`,
  } as Case,
  {
    name: 'and find its pieces, sizes and seams',
    setup: async () => readPdf((await setup()).bytes, { name: 'tiled.pdf' }),
    run: (drawing: Awaited<ReturnType<typeof readPdf>>) => recognise(drawing),
  } as Case,
];

export default cases;
