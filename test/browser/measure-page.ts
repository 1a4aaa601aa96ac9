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

const DPI = 300;
const MM = 25.4 / DPI;

/** A page as poppler draws it at 300 dpi: how dark each dot is, 0 to 255. */
function darkness(
  bytes: Uint8Array,
  page: number,
): { width: number; height: number; at: (x: number, y: number) => number } {
  return inFolder(bytes, (file) => {
    const out = join(file, '..', 'page');
    const pages = ['-f', String(page), '-l', String(page)];
    execFileSync('pdftoppm', ['-r', String(DPI), ...pages, '-gray', '-singlefile', file, out]);
    const pgm = readFileSync(`${out}.pgm`);
    const head = /^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(pgm.subarray(0, 64).toString('latin1'))!;
    const [width, height] = [Number(head[1]), Number(head[2])];
    return { width, height, at: (x, y) => 255 - (pgm[head[0].length + y * width + x] ?? 255) };
  });
}

/**
 * The drawn square on a page whose sides are nearest to `side` mm: the distances between the middles of its opposite lines, across and up, mm.
 * A line's middle is found to a small part of a dot by how dark the dots beside it are.
 */
export function measuredSquare(
  bytes: Uint8Array,
  page: number,
  side: number,
): { across: number; up: number } | null {
  const { width, height, at } = darkness(bytes, page);
  const dots = side / MM;
  const middle = (value: (k: number) => number, near: number): number => {
    let [weight, sum] = [0, 0];
    for (let k = Math.round(near) - 6; k <= Math.round(near) + 6; k++) {
      weight += value(k);
      sum += k * value(k);
    }
    return weight > 0 ? sum / weight : Number.NaN;
  };
  const rows: { y: number; from: number; to: number }[] = [];
  for (let y = 0; y < height; y++) {
    for (let x = 0, from = -1; x <= width; x++) {
      const dark = x < width && at(x, y) > 60;
      if (dark && from < 0) from = x;
      if (!dark && from >= 0) {
        if (Math.abs(x - from - dots) < 8) rows.push({ y, from, to: x });
        from = -1;
      }
    }
  }
  let best: { across: number; up: number } | null = null;
  for (const top of rows) {
    const bottom = rows.find((r) => Math.abs(r.y - top.y - dots) < 6 && Math.abs(r.from - top.from) < 3);
    if (!bottom) continue;
    // A quarter of the way along each side, clear of the words in the middle.
    const [x, y] = [Math.round(top.from + dots / 4), Math.round(top.y + dots / 4)];
    const across = (middle((k) => at(k, y), top.to - 1) - middle((k) => at(k, y), top.from)) * MM;
    const up = (middle((k) => at(x, k), bottom.y) - middle((k) => at(x, k), top.y)) * MM;
    if (!best || Math.abs(across - side) < Math.abs(best.across - side)) best = { across, up };
  }
  return best;
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
