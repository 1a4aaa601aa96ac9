// One thread of the layout bench. The loader of TypeScript is not handed down to threads: it is asked for here.
import { register } from 'tsx/esm/api';

register();
const { serveHand } = await import('../src/cli/index.ts');
if (!serveHand()) throw new Error('This is a thread of the layout bench: run "npm run bench -- layout".');
