import type { Flat } from './flat.ts';
import { flatArea, flatBox, tidyFlat } from './flat.ts';
import type { DepthFields } from './depth-field.ts';
import type { Rail } from './rail.ts';

/** One way a shape may lie: mirrored (x → −x) first if asked, then turned. */
export interface Turn {
  /** Degrees, counter-clockwise. */
  readonly angle: number;
  readonly mirrored?: boolean;
  /** Limits on the placed reference point, for stripes and folds. */
  readonly railX?: Rail;
  readonly railY?: Rail;
  /** The part of the width it must stay in (0 … width where absent): the doubled or the single part of folded cloth. */
  readonly lane?: readonly [number, number];
}

/** A shape to place `count` times. x runs along the strip, y across it. */
export interface StripShape {
  readonly outline: Flat;
  readonly count: number;
  readonly turns: readonly Turn[];
  /** Stays exactly here (turn 0): a pinned piece, a flaw, a used area. Only with count 1. */
  readonly pinned?: { readonly x: number; readonly y: number };
  /** A pinned shape that does not lengthen the lay: a flaw. */
  readonly obstacle?: boolean;
}

export interface StripJob {
  /** Usable width: 0 ≤ y ≤ width. */
  readonly width: number;
  readonly shapes: readonly StripShape[];
  /** The strip's end, where cloth is given. */
  readonly most?: number;
}

/** One shape in one turn. */
export interface Form {
  readonly shape: number;
  readonly turn: number;
  /** Degrees, 0 … 360. */
  readonly angle: number;
  readonly mirrored: boolean;
  /** The shape's outline as given, tidied: not mirrored, not turned. */
  readonly drawn: Flat;
  readonly outline: Flat;
  readonly box: readonly [number, number, number, number];
  readonly railX: Rail | null;
  readonly railY: Rail | null;
  /** Range of the reference point across the strip. */
  readonly low: number;
  readonly high: number;
}

/** A job's shapes in all their turns, and its items: what a placed layout is read by. */
export interface StripForms {
  readonly width: number;
  readonly most: number;
  readonly forms: readonly Form[];
  /** Shape of each item, in order of shapes. */
  readonly itemShape: readonly number[];
  readonly itemForms: readonly (readonly number[])[];
  readonly pinned: readonly ({ readonly x: number; readonly y: number } | null)[];
  readonly obstacle: readonly boolean[];
  /** The form turned by half, of the same shape: itself where it is its own, −1 where there is none. */
  readonly opposite: readonly number[];
  /** Of one copy of each shape, in square units. */
  readonly area: readonly number[];
  /** Mean piece size (root of area): the scale of every tolerance. */
  readonly scale: number;
  /** Area of all that is to be placed (obstacles left out). */
  readonly total: number;
}

/** A job made ready to search: its forms and the depth fields of every pair of them. Plain data and typed arrays only. */
export interface Strip extends StripForms {
  /** Field of (fixed form · F + moving form), −1 where both never move; and 1, or −1 where the field is to be read point-reflected. */
  readonly pairField: Int32Array;
  readonly pairSign: Int8Array;
  readonly fields: DepthFields;
}

/**
 * The strip is wider than asked for by this share of the mean piece size (some hundred-thousandths of a millimetre with garments): pieces that
 * fill its width exactly must be able to lie beside each other, free by more than rounding.
 */
const HAIR = 1e-7;

/** The outline in a turn, about its own origin. */
function turned(p: Flat, turn: Turn): Flat {
  const quarter = ((turn.angle % 360) + 360) % 360;
  // Quarter turns are exact, so that rectangles stay rectangles.
  const exact = [0, 90, 180, 270].indexOf(quarter);
  const c = exact >= 0 ? [1, 0, -1, 0][exact]! : Math.cos((quarter * Math.PI) / 180);
  const s = exact >= 0 ? [0, 1, 0, -1][exact]! : Math.sin((quarter * Math.PI) / 180);
  const f = turn.mirrored ? -1 : 1;
  const out = new Float64Array(p.length);
  for (let i = 0; i < p.length; i += 2) {
    // A mirrored outline runs the other way round; it is written backwards so that it stays counter-clockwise.
    const o = turn.mirrored ? p.length - 2 - i : i;
    const x = f * p[i]!;
    const y = p[i + 1]!;
    out[o] = c * x - s * y;
    out[o + 1] = s * x + c * y;
  }
  return out;
}

function sameUpToShift(a: Form, b: Form, slack: number): boolean {
  if (a.outline.length !== b.outline.length) return false;
  const n = a.outline.length;
  for (let start = 0; start < n; start += 2) {
    let same = true;
    for (let i = 0; same && i < n; i += 2) {
      const k = (i + start) % n;
      same =
        Math.abs(a.outline[i]! - a.box[0] - (b.outline[k]! - b.box[0])) <= slack &&
        Math.abs(a.outline[i + 1]! - a.box[1] - (b.outline[k + 1]! - b.box[1])) <= slack;
    }
    if (same) return true;
  }
  return false;
}

/** All the turns of all shapes, those alike left out, and the items to be placed. */
export function stripForms(job: StripJob): StripForms {
  const areas = job.shapes.map((s) => Math.abs(flatArea(s.outline)));
  const movable = job.shapes.filter((s) => !s.obstacle);
  const total = job.shapes.reduce((sum, s, i) => sum + (s.obstacle ? 0 : areas[i]! * s.count), 0);
  const items = Math.max(
    1,
    movable.reduce((n, s) => n + s.count, 0),
  );
  const scale = Math.sqrt(total / items) || 1;
  const forms: Form[] = [];
  const formsOf: number[][] = [];
  job.shapes.forEach((shape, s) => {
    const tidy = tidyFlat(shape.outline, scale * 1e-9);
    const own: number[] = [];
    (shape.pinned ? shape.turns.slice(0, 1) : shape.turns).forEach((_, t) => {
      const form = formOf(job, s, t, tidy, scale);
      if (own.some((o) => alike(forms[o]!, form, scale * 1e-9))) return;
      own.push(forms.length);
      forms.push(form);
    });
    formsOf.push(own);
  });
  const itemShape = job.shapes.flatMap((s, i) => Array.from({ length: s.count }, () => i));
  return {
    width: job.width,
    most: job.most ?? Infinity,
    forms,
    itemShape,
    itemForms: itemShape.map((s) => {
      const fit = formsOf[s]!.filter((f) => forms[f]!.low <= forms[f]!.high);
      return fit.length ? fit : formsOf[s]!;
    }),
    pinned: itemShape.map((s) => job.shapes[s]!.pinned ?? null),
    obstacle: itemShape.map((s) => job.shapes[s]!.obstacle === true),
    opposite: forms.map((f) =>
      forms.findIndex(
        (g) => g.shape === f.shape && g.mirrored === f.mirrored && (g.angle - f.angle + 360) % 360 === 180,
      ),
    ),
    area: areas,
    scale,
    total,
  };
}

function formOf(job: StripJob, shape: number, nth: number, drawn: Flat, scale: number): Form {
  const turn = job.shapes[shape]!.turns[nth]!;
  const outline = turned(drawn, turn);
  const box = flatBox(outline);
  const lane = turn.lane ?? [0, job.width];
  const low = lane[0] - box[1];
  const high = lane[1] - box[3] + (lane[1] === job.width ? HAIR * scale : 0);
  return {
    shape,
    turn: nth,
    angle: ((turn.angle % 360) + 360) % 360,
    mirrored: turn.mirrored === true,
    drawn,
    outline,
    box,
    low,
    // A piece exactly as high as its lane must not be lost to rounding.
    high: Math.abs(high - low) <= scale * 1e-9 ? low : high,
    railX: turn.railX ?? null,
    railY: turn.railY ?? null,
  };
}

/** Whether two turns of a shape are one and the same: alike but for a shift, and as free. */
const alike = (f: Form, g: Form, slack: number): boolean =>
  !f.railX &&
  !f.railY &&
  !g.railX &&
  !g.railY &&
  f.low + f.box[1] === g.low + g.box[1] &&
  sameUpToShift(f, g, slack);
