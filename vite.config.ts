import { resolve } from 'node:path';
import { defineConfig } from 'vite';
import { offline } from './src/workbench/offline/plugin.ts';

const rooms = resolve(import.meta.dirname, 'src');

/**
 * Our rooms are pure: importing one does nothing. Said to the bundler, so that a door opened for one noun does not drag the PDF
 * writer into the first page. What does act when imported: entries, workers, styles.
 */
const treeshake = {
  moduleSideEffects: (id: string): boolean =>
    !id.startsWith(rooms) || /\.css$|main\.tsx$|-worker\.ts$|index\.html$/.test(id),
};

/** The workbench: a page of static files that may be served from any folder (`base: './'`). */
export default defineConfig({
  root: resolve(rooms, 'workbench'),
  base: './',
  publicDir: 'public',
  plugins: [offline()],
  worker: { format: 'es', rolldownOptions: { treeshake } },
  build: {
    outDir: resolve(import.meta.dirname, 'dist/workbench'),
    emptyOutDir: true,
    target: 'es2023',
    chunkSizeWarningLimit: 1500,
    // No inlined fonts or pictures: the page's policy allows its own files only.
    assetsInlineLimit: 0,
    rolldownOptions: { treeshake },
  },
});
