import type { Rows } from './interior-point.ts';
import { leastCost, WIDTH } from './interior-point.ts';
import type { Places } from './placer.ts';
import type { Strip } from './strip.ts';

/** Rows of the programme as they are gathered. */
class RowList {
  readonly index: number[] = [];
  readonly value: number[] = [];
  readonly bound: number[] = [];
  add(bound: number, ...entries: readonly (readonly [number, number])[]): void {
    let used = 0;
    for (const [v, a] of entries) {
      if (v < 0 || a === 0) continue;
      this.index.push(v);
      this.value.push(a);
      used++;
    }
    for (; used < WIDTH; used++) {
      this.index.push(-1);
      this.value.push(0);
    }
    this.bound.push(bound);
  }
}

/**
 * Moves all pieces at once to the shortest strip their present arrangement allows: each near pair must stay beyond the no-fit edge it now
 * faces, a linear programme within `trust`. Overlaps left in the layout are pressed out at the same time.
 * Changes `places`; returns the new length, or NaN where the programme found nothing.
 */
export function squeezeOnce(
  strip: Strip,
  places: Places,
  length: number,
  trust: number,
  clear: number,
): number {
  const n = strip.itemShape.length;
  const F = strip.forms.length;
  const unit = strip.scale;
  const { fields } = strip;
  const order = Array.from({ length: n }, (_, i) => i).sort((a, b) => places.x[a]! - places.x[b]! || a - b);
  const vx = new Int32Array(n).fill(-1);
  const vy = new Int32Array(n).fill(-1);
  let vars = 0;
  for (const i of order) {
    if (strip.pinned[i]) continue;
    const form = strip.forms[places.form[i]!]!;
    if (!form.railX) vx[i] = vars++;
    if (!form.railY) vy[i] = vars++;
  }
  const vLength = vars++;
  const vSlack = vars++;
  const rows = new RowList();
  // Two pieces may come nearer by the trust of both, along both axes.
  const sight = 2 * Math.SQRT2 * trust;
  for (let i = 0; i < n; i++) {
    const form = strip.forms[places.form[i]!]!;
    const { box } = form;
    if (strip.obstacle[i]) continue;
    rows.add((places.x[i]! + box[2] - length) / unit, [vLength, 1], [vx[i]!, -1]);
    if (vx[i]! >= 0) {
      rows.add(Math.max(-trust, -box[0] - places.x[i]!) / unit, [vx[i]!, 1]);
      rows.add(-trust / unit, [vx[i]!, -1]);
    }
    if (vy[i]! >= 0) {
      rows.add(Math.max(-trust, form.low - places.y[i]!) / unit, [vy[i]!, 1]);
      rows.add(Math.max(-trust, places.y[i]! - form.high) / unit, [vy[i]!, -1]);
    }
  }
  rows.add(0, [vSlack, 1]);
  rows.add(-1, [vSlack, -1]);
  rows.add(-0.5, [vLength, 1]);
  rows.add(-0.5, [vLength, -1]);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < i; j++) {
      const pair = places.form[j]! * F + places.form[i]!;
      const k = strip.pairField[pair]!;
      if (k < 0 || (vx[i]! < 0 && vy[i]! < 0 && vx[j]! < 0 && vy[j]! < 0)) continue;
      const s = strip.pairSign[pair]!;
      const x = s * (places.x[i]! - places.x[j]!);
      const y = s * (places.y[i]! - places.y[j]!);
      const bx = x - fields.x0[k]!;
      const by = y - fields.y0[k]!;
      if (bx < -sight || by < -sight || bx > fields.wide[k]! + sight || by > fields.high[k]! + sight)
        continue;
      let nearest = -1;
      let best = Infinity;
      let lean = 0;
      const end = fields.first[k + 1]!;
      const e = fields.edges;
      for (let q = fields.first[k]!; q < end; q++) {
        const ux = e[5 * q + 2]!;
        const uy = e[5 * q + 3]!;
        const dx = x - e[5 * q]!;
        const dy = y - e[5 * q + 1]!;
        const t = dx * ux + dy * uy;
        const along = t < 0 ? 0 : t > e[5 * q + 4]! ? e[5 * q + 4]! : t;
        const ox = dx - along * ux;
        const oy = dy - along * uy;
        const d = ox * ox + oy * oy;
        const across = Math.abs(dy * ux - dx * uy);
        if (d < best * 0.9999999 || (d <= best * 1.0000001 && across > lean)) {
          best = Math.min(best, d);
          lean = across;
          nearest = q;
        }
      }
      const face = (q: number): number =>
        (x - e[5 * q]!) * e[5 * q + 3]! - (y - e[5 * q + 1]!) * e[5 * q + 2]!;
      const wall = (q: number): void => {
        const nx = e[5 * q + 3]! * s;
        const ny = -e[5 * q + 2]! * s;
        rows.add(
          (clear - face(q)) / unit,
          [vx[i]!, nx],
          [vy[i]!, ny],
          [vx[j]!, -nx],
          [vy[j]!, -ny],
          [vSlack, 1],
        );
      };
      const out = face(nearest);
      if (out > sight) continue;
      wall(nearest);
      if (out < 0) continue;
      for (let q = fields.first[k]!; q < end; q++) {
        if (q === nearest) continue;
        const h = face(q);
        if (h < 0 || h > sight) continue;
        const t = (x - e[5 * q]!) * e[5 * q + 2]! + (y - e[5 * q + 1]!) * e[5 * q + 3]!;
        const over = t - e[5 * q + 4]!;
        if (t < 0 && (t < -sight || !(fields.reflex[q]! & 1))) continue;
        if (over > 0 && (over > sight || !(fields.reflex[q]! & 2))) continue;
        wall(q);
      }
    }
  }
  const cost = new Float64Array(vars);
  cost[vLength] = 1;
  cost[vSlack] = 50;
  const programme: Rows = {
    vars,
    index: Int32Array.from(rows.index),
    value: Float64Array.from(rows.value),
    bound: Float64Array.from(rows.bound),
    count: rows.bound.length,
  };
  const z = leastCost(programme, cost);
  if (!z) return NaN;
  for (let i = 0; i < n; i++) {
    const { box, low, high } = strip.forms[places.form[i]!]!;
    if (vx[i]! >= 0) places.x[i] = Math.max(-box[0], places.x[i]! + z[vx[i]!]! * unit);
    if (vy[i]! >= 0) places.y[i] = Math.min(high, Math.max(low, places.y[i]! + z[vy[i]!]! * unit));
  }
  return length + z[vLength]! * unit;
}
