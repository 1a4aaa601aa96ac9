export { serveFolder } from './serve.ts';
