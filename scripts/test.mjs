// `npm test`: installs if needed, then everything: types, lint, unused code, format, units, checks, build, browser. One closing line.
import { existsSync, mkdirSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { findChromium, has, installDebian } from './chromium.mjs';
import { ensureInstalled, root, run, tool } from './ensure.mjs';

ensureInstalled();

/** Outside tools that some checks measure with; a check skips loudly where its tool is missing. */
const OUTSIDE = [
  { command: 'pdftoppm', packages: ['poppler-utils'] },
  { command: 'qpdf', packages: ['qpdf'] },
];
const missing = OUTSIDE.filter(({ command }) => !has(command));
const wantsEzdxf = !existsSync('/usr/lib/python3/dist-packages/ezdxf');
if (missing.length > 0 || !findChromium() || wantsEzdxf) {
  const packages = [
    ...missing.flatMap((m) => m.packages),
    ...(findChromium() ? [] : ['chromium']),
    ...(wantsEzdxf ? ['python3-ezdxf'] : []),
  ];
  installDebian(packages);
}
for (const { command } of OUTSIDE.filter((o) => !has(o.command))) {
  console.error(`note: ${command} is not installed; the checks that measure with it will be skipped.`);
}

const out = join(root, 'out');
rmSync(out, { recursive: true, force: true });
mkdirSync(out, { recursive: true });

const totals = { passed: 0, failed: 0, skipped: 0 };
const broken = [];

/** Runs one vitest configuration and adds its counts. */
function vitest(name, args) {
  const report = join(out, `${name}.json`);
  const code = run(process.execPath, [
    tool('vitest/vitest.mjs'),
    'run',
    ...args,
    '--reporter=default',
    '--reporter=json',
    `--outputFile.json=${report}`,
  ]);
  if (existsSync(report)) {
    const counts = JSON.parse(readFileSync(report, 'utf8'));
    totals.passed += counts.numPassedTests;
    totals.failed += counts.numFailedTests;
    totals.skipped += counts.numPendingTests + (counts.numTodoTests ?? 0);
  }
  if (code !== 0) broken.push(name);
}

function step(name, args) {
  console.error(`── ${name}`);
  if (run(process.execPath, args) !== 0) broken.push(name);
}

step('types', [tool('typescript/bin/tsc'), '-p', '.']);
step('lint', [tool('oxlint/bin/oxlint'), '--quiet']);
step('unused files, exports and packages', [tool('knip/bin/knip.js'), '--treat-config-hints-as-errors']);
step('format', [tool('prettier/bin/prettier.cjs'), '--check', '--log-level=warn', '.']);
console.error('── units and checks');
vitest('units', []);
step('build', [join(root, 'scripts', 'build.mjs')]);

const chromium = findChromium();
if (!chromium) {
  console.error(
    'The browser tests did not run: no Chromium or Chrome was found. Install one, or set CHROME_PATH to it.',
  );
  broken.push('browser (no Chromium or Chrome found)');
} else {
  console.error('── browser');
  process.env.CHROME_PATH = chromium;
  vitest('browser', ['--config', 'vitest.browser.config.ts']);
}

if (broken.length > 0) console.error(`not well: ${broken.join(', ')}`);
console.log(`${totals.passed} passed, ${totals.failed} failed, ${totals.skipped} skipped`);
process.exit(broken.length > 0 || totals.failed > 0 ? 1 : 0);
