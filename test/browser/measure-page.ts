import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** Whether poppler is there: an independent renderer that measures what we printed. */
export function hasPoppler(): boolean {
  try {
    execFileSync('pdftoppm', ['-v'], { stdio: 'ignore' });
    return true;
  } catch {
    return false;
  }
}

/** Pages and size in points of a PDF, as poppler's pdfinfo says. */
export function pdfFacts(bytes: Uint8Array): { pages: number; width: number; height: number } {
  return inFolder(bytes, (file) => {
    const text = execFileSync('pdfinfo', [file], { encoding: 'utf8' });
    const size = /Page size:\s+([\d.]+) x ([\d.]+)/.exec(text)!;
    return {
      pages: Number(/Pages:\s+(\d+)/.exec(text)![1]),
      width: Number(size[1]),
      height: Number(size[2]),
    };
  });
}

/** Every unbroken run of ink along the rows of a page, rendered by pdftoppm at 254 dpi (10 px to the mm), in mm; runs shorter than 20 mm are left out. */
export function inkRuns(bytes: Uint8Array, page: number): number[] {
  return inFolder(bytes, (file) => {
    const out = join(file, '..', 'page');
    execFileSync('pdftoppm', [
      '-r',
      '254',
      '-f',
      String(page),
      '-l',
      String(page),
      '-gray',
      '-singlefile',
      file,
      out,
    ]);
    const pgm = readFileSync(`${out}.pgm`);
    const head = /^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(pgm.subarray(0, 64).toString('latin1'))!;
    const [width, height] = [Number(head[1]), Number(head[2])];
    const runs: number[] = [];
    for (let y = 0; y < height; y++) {
      let run = 0;
      for (let x = 0; x <= width; x++) {
        const dark = x < width && pgm[head[0].length + y * width + x]! < 140;
        if (dark) run++;
        else {
          if (run >= 200) runs.push(run / 10);
          run = 0;
        }
      }
    }
    return runs;
  });
}

function inFolder<T>(bytes: Uint8Array, act: (file: string) => T): T {
  const folder = mkdtempSync(join(tmpdir(), 'pintrue-pdf-'));
  try {
    const file = join(folder, 'out.pdf');
    writeFileSync(file, bytes);
    return act(file);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
