import { pathFlatten, pathsRing, pointsBox, ringContains } from '../geometry/index.ts';
import type { Path, Point, Ring } from '../geometry/index.ts';
import type { Words } from './drawing.ts';
import { enters } from './enters.ts';

/** A line of a label: its words and how large against the label's body type. */
export interface LabelLine {
  readonly text: string;
  readonly scale: number;
  readonly bold?: boolean;
}

const BODY_TYPES = [4.2, 3.4, 2.6, 2.1, 1.6];
const LEADING = 1.4;
/** Width of a letter against its height, on the safe side for a plain sans. */
const LETTER = 0.54;
/** Steps of the search in each direction; a dozen finds any place a person would choose. */
const STEPS = 14;
/** Flattening for the search: a label keeps further away than that by its own white. */
const COARSE_MM = 0.5;

/** Width and height of the lines at a body type, mm. */
function extent(lines: readonly LabelLine[], type: number): { width: number; height: number } {
  return {
    width: Math.max(...lines.map((l) => l.text.length * l.scale * type * (l.bold ? LETTER * 1.08 : LETTER))),
    height: lines.reduce((sum, l) => sum + l.scale * type * LEADING, 0),
  };
}

/** Lower left corner at which a block of this size lies inside of the ring and clear of the lines: the one nearest to the middle. */
function place(
  ring: Ring,
  lines: readonly (readonly Point[])[],
  width: number,
  height: number,
): Point | undefined {
  const box = pointsBox(ring);
  const middle = { x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2 };
  const [dx, dy] = [box.maxX - box.minX - width, box.maxY - box.minY - height];
  if (dx < 0 || dy < 0) return undefined;
  const candidates: { at: Point; far: number }[] = [];
  for (let i = 0; i <= STEPS; i++) {
    for (let k = 0; k <= STEPS; k++) {
      const at = { x: box.minX + (dx * i) / STEPS, y: box.minY + (dy * k) / STEPS };
      candidates.push({ at, far: Math.hypot(at.x + width / 2 - middle.x, at.y + height / 2 - middle.y) });
    }
  }
  candidates.sort((a, b) => a.far - b.far || a.at.y - b.at.y || a.at.x - b.at.x);
  const closed = [...ring, ring[0]!];
  const hit = (line: readonly Point[], at: Point): boolean =>
    line.some((p, i) => i > 0 && enters(line[i - 1]!, p, at.x, at.y, at.x + width, at.y + height));
  return candidates.find(
    ({ at }) => ringContains(ring, at) && !hit(closed, at) && !lines.some((line) => hit(line, at)),
  )?.at;
}

const quarter = (p: Point): Point => ({ x: p.y, y: -p.x });

/**
 * The label set inside of the ring: as large as it fits, clear of the lines to avoid if that can be had, lying or else standing (read from the right).
 * On a piece too small for any of it the smallest type goes in its middle all the same.
 */
export function setLabel(
  ring: Ring,
  avoid: readonly (readonly Path[])[],
  lines: readonly LabelLine[],
): Words[] {
  const clear = avoid.map((paths) => paths.map((path) => pathFlatten(path, COARSE_MM)));
  for (const type of BODY_TYPES) {
    const { width, height } = extent(lines, type);
    for (const obstacles of clear) {
      const lying = place(ring, obstacles, width, height);
      if (lying) return words(lines, type, lying, 0);
      const standing = place(
        ring.map(quarter),
        obstacles.map((o) => o.map(quarter)),
        width,
        height,
      );
      if (standing) return words(lines, type, standing, Math.PI / 2);
    }
  }
  const box = pointsBox(ring);
  const type = BODY_TYPES[BODY_TYPES.length - 1]!;
  const { width, height } = extent(lines, type);
  return words(
    lines,
    type,
    { x: (box.minX + box.maxX - width) / 2, y: (box.minY + box.maxY - height) / 2 },
    0,
  );
}

function words(lines: readonly LabelLine[], type: number, at: Point, angle: number): Words[] {
  let y = at.y + extent(lines, type).height;
  return lines.map((line) => {
    const size = line.scale * type;
    y -= size * LEADING;
    const p = { x: at.x, y: y + size * 0.3 };
    return {
      layer: 'labels',
      text: line.text,
      size,
      angle,
      align: 'start',
      at: angle === 0 ? p : { x: -p.y, y: p.x },
      ...(line.bold ? { bold: true } : {}),
    };
  });
}

/** A ring from the sides of an outline, coarse enough for the search. */
export const labelRing = (paths: readonly Path[]): Ring => pathsRing(paths, COARSE_MM);
