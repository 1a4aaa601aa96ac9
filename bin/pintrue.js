#!/usr/bin/env node
import { existsSync } from 'node:fs';

const built = new URL('../dist/cli/main.js', import.meta.url);
if (!existsSync(built)) {
  console.error('pintrue is not built yet: run "npm run build" in its folder first.');
  process.exit(2);
}
await import(built.href);
