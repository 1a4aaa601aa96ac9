import { alterationOf, applyStep, type AlterStep } from '../../alter/index.ts';
import type { Garment, Phrase } from '../../garment/index.ts';
import type { Point } from '../../geometry/index.ts';
import type { Made } from '../../pipeline/index.ts';

/**
 * A place on a piece where an amount can be taken hold of: the corner that answers most to it. Pulling by `v` mm changes the
 * amount by v·gain / |gain|² (gain: how far the corner moves for each unit of the amount, found by trying a small change).
 */
export interface Grip {
  readonly param: string;
  readonly name: Phrase;
  readonly kind: 'length' | 'angle';
  readonly piece: string;
  readonly at: Point;
  readonly gain: Point;
  readonly amount: number;
  readonly min: number;
  readonly max: number;
}

/** Tried change: large enough to stand clear of curve fitting (0.05 mm), small enough to be a slope. mm or degrees. */
export const TRY = 4;
/** A corner that moves less than this share of the amount is no place to take hold. */
const LEAST_GAIN = 0.15;

/** The grips of one alteration: at most two places for each of its amounts, on different pieces. */
export function gripsOf(made: Made, stepId: string): readonly Grip[] {
  const result = made.steps.find((s) => s.step.id === stepId);
  if (!result || result.step.kind !== 'alter' || result.step.off) return [];
  const step = result.step;
  const params = alterationOf(step.entry)?.params ?? [];
  return params.flatMap((param) => {
    if (param.kind !== 'length' && param.kind !== 'angle') return [];
    const given = step.params[param.id];
    const amount = typeof given === 'number' ? given : param.default;
    const by = amount + TRY <= param.max ? TRY : -TRY;
    const tried: AlterStep = { ...step, params: { ...step.params, [param.id]: amount + by } };
    const base = applyStep(result.before, { ...step, params: { ...step.params, [param.id]: amount } });
    const other = applyStep(result.before, tried);
    return strongest(base.garment, other.garment, by)
      .slice(0, 2)
      .map((found) => ({
        ...found,
        param: param.id,
        name: param.name,
        kind: param.kind,
        amount,
        min: param.min,
        max: param.max,
      }));
  });
}

/** Per piece the corner that moved most, strongest piece first. */
function strongest(base: Garment, other: Garment, by: number): Pick<Grip, 'piece' | 'at' | 'gain'>[] {
  const found: (Pick<Grip, 'piece' | 'at' | 'gain'> & { strength: number })[] = [];
  for (const [i, piece] of base.pieces.entries()) {
    const moved = other.pieces[i];
    if (!moved || moved === piece || moved.edges.length !== piece.edges.length || piece.cloth !== 'shell')
      continue;
    let best: (typeof found)[number] | null = null;
    for (const [e, edge] of piece.edges.entries()) {
      const [p, q] = [edge.path[0]!, moved.edges[e]!.path[0]!];
      const gain = { x: (q.x - p.x) / by, y: (q.y - p.y) / by };
      const strength = Math.hypot(gain.x, gain.y);
      if (strength < LEAST_GAIN || (best && strength <= best.strength + 1e-6)) continue;
      best = {
        piece: piece.id,
        at: p,
        gain,
        strength,
      };
    }
    if (best) found.push(best);
  }
  return found.sort((a, b) => b.strength - a.strength).map(({ strength: _strength, ...rest }) => rest);
}
