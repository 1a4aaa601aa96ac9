import { type Phrase } from '../../garment/index.ts';
import type { Cloth, Garment } from '../../garment/index.ts';
import { cuttingPieces, garmentMatches, type LayJob, matchStripes, type Repeat } from '../../layout/index.ts';
import type { LaySettings } from './lay-settings.ts';

/** Stripes as the settings say; none: null. */
export function repeatOf(s: LaySettings): Repeat | null {
  if (s.repeatAlong <= 0 && s.repeatAcross <= 0) return null;
  return {
    ...(s.repeatAlong > 0 ? { along: s.repeatAlong } : {}),
    ...(s.repeatAcross > 0 ? { across: s.repeatAcross } : {}),
  };
}

/** The lay asked for, and where stripes cannot meet. The cloth is laid washed: narrower by what it shrinks. */
export function jobOf(
  garment: Garment,
  cloth: Cloth,
  s: LaySettings,
): { job: LayJob; misfits: readonly { say: Phrase; mm: number }[] } {
  const repeat = repeatOf(s);
  const plain = cuttingPieces(garment, cloth);
  const { pieces, held, misfits } = repeat
    ? matchStripes(plain, garmentMatches(garment), repeat)
    : { pieces: plain, held: [], misfits: [] };
  const job: LayJob = {
    cloth,
    width: s.width * (1 - s.shrinkWidth),
    selvage: s.selvage,
    fold: s.fold,
    nap: s.nap,
    gap: s.gap,
    pieces,
    flaws: s.spoilt.map(({ fromEnd: x, fromEdge: y, long, high }) => [
      { x, y },
      { x: x + long, y },
      { x: x + long, y: y + high },
      { x, y: y + high },
    ]),
    pins: s.pins,
    ...(s.remnant.length >= 3 ? { remnant: s.remnant } : {}),
    ...(repeat ? { repeat, matches: held } : {}),
  };
  return { job, misfits };
}
