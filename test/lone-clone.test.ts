import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { dirname, join, relative, resolve, sep } from 'node:path';
import { describe, expect, it } from 'vitest';

/** A clone of the repository proves itself wherever it lies: nothing it runs reads what lies beside it, nothing is skipped for want of that. */
const root = resolve(import.meta.dirname, '..');

function files(folder: string): string[] {
  return readdirSync(join(root, folder)).flatMap((name) => {
    const path = join(folder, name);
    if (statSync(join(root, path)).isDirectory()) return files(path);
    return /\.(tsx?|mjs|js|py|css)$/.test(name) ? [path] : [];
  });
}
const CODE = ['test', 'checks', 'src', 'bench', 'scripts', 'bin'].flatMap(files);
const textOf = (path: string): string => readFileSync(join(root, path), 'utf8');

/** Paths upwards that are no files of ours: what a build makes, and what the page's server is asked for and must not give. */
const NOT_THERE = new Set(['dist/cli/main.js', 'src/secret.txt']);
/** Where outside programs are installed: the only folders beside the repository that may be named. */
const PROGRAMS = /^\/usr\/(bin|lib)\//;

/** What in a text leads out of the repository, or to nothing in it, when the file lies in `folder`. */
function leadingOut(folder: string, text: string): string[] {
  const upwards = [...text.matchAll(/(?:\.\.\/)+[\w./*-]*/g)]
    .map(([path]) => path.replace(/[.*]+$/, ''))
    .filter((path) => {
      const target = relative(root, resolve(root, folder, path));
      return target.startsWith('..') || !(existsSync(join(root, target)) || NOT_THERE.has(target));
    });
  // Steps as words of their own, as join() takes them: never more in a row than the file lies deep.
  const depth = folder.split(sep).length;
  const steps = [...text.matchAll(/(['"`])\.\.\1(?:,\s*(['"`])\.\.\2)*/g)]
    .map(([run]) => run)
    .filter((run) => run.split(',').length > depth);
  const absolute = [
    ...text.matchAll(
      /(?<=['"`])(?:~|\/(?:home|Users|root|work|mnt|media|srv|opt|etc|var|tmp|usr))\/[^'"`]*/g,
    ),
  ]
    .map(([path]) => path)
    .filter((path) => !PROGRAMS.test(path));
  return [...upwards, ...steps, ...absolute];
}

describe('a lone clone', () => {
  it('sees a path that leads out of it', () => {
    const up = Array<string>(2).fill('..');
    const out = [...up, 'x'].join('/');
    const steps = up.map((step) => `'${step}'`).join(', ');
    const abroad = ['', 'home', 'somebody', 'x.csv'].join('/');
    expect(leadingOut('test', `'${out}'`)).toEqual([out]);
    expect(leadingOut('test', `join(here, ${steps}, 'x')`)).toEqual([steps]);
    expect(leadingOut(join('src', 'host'), `join(here, ${steps}, 'x')`)).toEqual([]);
    expect(leadingOut('test', `'${abroad}'`)).toEqual([abroad]);
    expect(leadingOut('test', `'${['..', 'no-such-folder'].join('/')}'`)).toHaveLength(1);
    expect(leadingOut('test', `'${['..', 'src'].join('/')}'`)).toEqual([]);
  });

  it('has no file that leads out of it', () => {
    expect(CODE.length).toBeGreaterThan(500);
    const out = CODE.flatMap((path) => leadingOut(dirname(path), textOf(path)).map((to) => `${path}: ${to}`));
    expect(out).toEqual([]);
  });

  it('skips a test only where an outside program is missing', () => {
    const skipping = CODE.filter((path) => /\.(test|spec)\.tsx?$/.test(path))
      .filter((path) => /\b(skip|skipIf|runIf|todo)\(/.test(textOf(path)))
      .toSorted();
    // ezdxf; poppler and qpdf
    expect(skipping).toEqual([
      'checks/dxf-ezdxf.test.ts',
      'checks/paper-scale.test.ts',
      'checks/pdf-layers.test.ts',
      'checks/plain-dxf.test.ts',
      'test/browser/journey.spec.ts',
      'test/browser/print.spec.ts',
    ]);
  });
});
