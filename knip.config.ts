import type { KnipConfig } from 'knip';

/** What knip starts from: everything a person, a script, a worker or a bundler opens by its name. */
const config: KnipConfig = {
  entry: [
    'scripts/*.{mjs,ts}',
    'bench/*.run.ts',
    'bench/layout-hand.mjs',
    'bench/run-{cases,one}.ts',
    'src/{cli,host}/main.ts',
    'src/workbench/offline/service-worker.js',
    // AssemblyScript: scripts/kernel.mjs makes it into kernel-bytes.ts.
    'src/layout/search/kernel/index.ts',
  ],
  project: ['{bench,bin,checks,scripts,src,test}/**/*.{ts,tsx,mjs,js,css}', '*.config.ts'],
  // Programs the checks measure with; they skip loudly without them.
  ignoreBinaries: ['pdftoppm', 'pdftotext', 'pdfinfo', 'qpdf', 'apt-get'],
  // Read as a text by test/browser/axe.spec.ts and put into the page.
  ignoreDependencies: ['axe-core'],
  // A type that a door's function takes or gives belongs to the door, whether or not somebody writes its name.
  exclude: ['types'],
  compilers: {
    css: (text) =>
      [...text.matchAll(/@import\s+'([^']+)'|url\('(@[^']+)'\)/g)]
        .map((m) => `import '${m[1] ?? m[2]}';`)
        .join('\n'),
  },
};

export default config;
