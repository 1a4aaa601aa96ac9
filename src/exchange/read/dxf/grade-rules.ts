import { REFUSAL_WORDS as NO } from '../../words/refusal-table.ts';
import { MM_PER } from '../../../garment/index.ts';
import type { Point } from '../../../geometry/index.ts';
import { DxfError } from './pairs.ts';
import type { DxfPiece } from './style.ts';

/**
 * A grade rule table (the ASCII companion of a D6673 file): for each numbered rule one x, y step per size,
 * each relative to the neighbouring size nearer the sample, in mm. The sample's own step is 0, 0.
 * Source: docs/trade.md section 11 [memory].
 */
export interface GradeRules {
  readonly sizes: readonly string[];
  readonly sampleSize: string;
  readonly rules: ReadonlyMap<number, readonly Point[]>;
}

/** Reads a rule table; throws DxfError with the line of what cannot be read. */
export function readGradeRules(text: string): GradeRules {
  const lines = text.split(/\r?\n/);
  let sizes: string[] = [];
  let sampleSize = '';
  let mm = 1;
  const rules = new Map<number, Point[]>();
  let current: Point[] | undefined;
  lines.forEach((line, i) => {
    const said = /^\s*(UNITS|SIZE LIST|SAMPLE SIZE|RULE\s*:\s*DELTA|RULE)\s*:?\s*(.*)$/i.exec(line);
    const key = said?.[1]?.toUpperCase().replace(/\s+/g, ' ');
    if (key === 'UNITS') mm = /ENGLISH|INCH/i.test(said![2]!) ? MM_PER.in : 1;
    else if (key === 'SIZE LIST')
      sizes = said![2]!
        .trim()
        .split(/[\s,]+/)
        .filter(Boolean);
    else if (key === 'SAMPLE SIZE') sampleSize = said![2]!.trim();
    else if (key?.startsWith('RULE')) {
      const number = /(\d{1,6})\s*$/.exec(said![2]!);
      if (!number) throw new DxfError(NO['rule-unnumbered'](), i + 1);
      current = [];
      rules.set(Number(number[1]), current);
    } else if (current && line.trim() !== '' && !/^\s*END/i.test(line)) {
      const pairs = [...line.matchAll(/(-?\d*\.?\d+)\s*,\s*(-?\d*\.?\d+)/g)];
      if (pairs.length === 0) return;
      current.push(...pairs.map((m) => ({ x: Number(m[1]) * mm, y: Number(m[2]) * mm })));
    }
  });
  if (sizes.length === 0) throw new DxfError(NO['rules-sizeless']());
  for (const [number, steps] of rules) {
    if (steps.length !== sizes.length) {
      throw new DxfError(NO['rule-steps']({ rule: number, steps: steps.length, sizes: sizes.length }));
    }
  }
  return { sizes, sampleSize, rules };
}

/** Shift of a rule at a size: the steps from the sample to it, added up. */
function ruleShift(rules: GradeRules, rule: number, size: number): Point {
  const sample = Math.max(0, rules.sizes.indexOf(rules.sampleSize));
  const steps = rules.rules.get(rule);
  let x = 0;
  let y = 0;
  if (!steps) return { x, y };
  for (let i = sample; i < size; i++) {
    x += steps[i + 1]!.x;
    y += steps[i + 1]!.y;
  }
  for (let i = sample - 1; i >= size; i--) {
    x += steps[i]!.x;
    y += steps[i]!.y;
  }
  return { x, y };
}

/** A piece of the sample size moved to another size: ruled points by their rule, points between them in proportion of length. */
export function gradePiece(base: DxfPiece, rules: GradeRules, size: number): DxfPiece {
  const ring = base.boundary;
  const ruled = new Map<number, Point>();
  for (const { at, rule } of base.rules) {
    let nearest = 0;
    ring.forEach((p, i) => {
      const better =
        Math.hypot(p.x - at.x, p.y - at.y) < Math.hypot(ring[nearest]!.x - at.x, ring[nearest]!.y - at.y);
      if (better) nearest = i;
    });
    ruled.set(nearest, ruleShift(rules, rule, size));
  }
  const anchors = [...ruled.keys()].sort((a, b) => a - b);
  if (anchors.length === 0) return { ...base, size: rules.sizes[size] ?? base.size };
  const n = ring.length;
  const shifts: Point[] = Array.from({ length: n }, () => ({ x: 0, y: 0 }));
  anchors.forEach((from, k) => {
    const to = anchors[(k + 1) % anchors.length]!;
    const count = anchors.length === 1 ? n : (to - from + n) % n;
    const lengths = [0];
    for (let i = 1; i <= count; i++) {
      const a = ring[(from + i - 1) % n]!;
      const b = ring[(from + i) % n]!;
      lengths.push(lengths[i - 1]! + Math.hypot(b.x - a.x, b.y - a.y));
    }
    const whole = lengths[count]! || 1;
    const start = ruled.get(from)!;
    const end = ruled.get(to)!;
    for (let i = 0; i < count; i++) {
      const t = lengths[i]! / whole;
      shifts[(from + i) % n] = { x: start.x + (end.x - start.x) * t, y: start.y + (end.y - start.y) * t };
    }
  });
  const boundary = ring.map((p, i) => ({ x: p.x + shifts[i]!.x, y: p.y + shifts[i]!.y }));
  const nearestShift = (q: Point): Point => {
    let best = 0;
    ring.forEach((p, i) => {
      if (Math.hypot(p.x - q.x, p.y - q.y) < Math.hypot(ring[best]!.x - q.x, ring[best]!.y - q.y)) best = i;
    });
    return { x: q.x + shifts[best]!.x, y: q.y + shifts[best]!.y };
  };
  return {
    ...base,
    size: rules.sizes[size] ?? base.size,
    boundary,
    turnPoints: base.turnPoints.map(nearestShift),
    notches: base.notches.map(nearestShift),
    sew: base.sew.map((line) => line.map(nearestShift)),
  };
}
