import { resolve } from 'node:path';
import { defineConfig } from 'vite';
import { offline } from './src/workbench/offline/plugin.ts';

/** The workbench: a page of static files that may be served from any folder (`base: './'`). */
export default defineConfig({
  root: resolve(import.meta.dirname, 'src/workbench'),
  base: './',
  publicDir: 'public',
  plugins: [offline()],
  worker: { format: 'es' },
  build: {
    outDir: resolve(import.meta.dirname, 'dist/workbench'),
    emptyOutDir: true,
    target: 'es2023',
    chunkSizeWarningLimit: 900,
    // No inlined fonts or pictures: the page's policy allows its own files only.
    assetsInlineLimit: 0,
  },
});
