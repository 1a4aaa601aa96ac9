export { EXIT, runCli } from './run.ts';
export type { Io } from './io.ts';
export { nodeHands, serveHand } from './lay-hands.ts';
