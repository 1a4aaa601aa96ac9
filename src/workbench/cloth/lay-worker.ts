import type { Cloth, Finding, Garment } from '../../garment/index.ts';
import { movePoint } from '../../geometry/index.ts';
import {
  garmentMatches,
  matchStripes,
  openedOutline,
  proveLay,
  startLay,
  type Lay,
  type LayJob,
  type LayRun,
  type Placement,
} from '../../layout/index.ts';
import { ringD } from '../drawing/path-d.ts';
import { answerCalls } from '../worker/call.ts';
import { cuttingPieces } from '../../pipeline/index.ts';
import type { LaySettings } from './lay-settings.ts';

/** A piece as it lies, ready to draw: x along the cloth, y across, mm. */
export interface Lying extends Placement {
  readonly name: string;
  readonly number: number;
  readonly d: string;
  readonly at: { readonly x: number; readonly y: number };
}
export interface LayPicture {
  readonly length: number;
  readonly spread: number;
  readonly across: number;
  readonly folded: number;
  readonly density: number;
  readonly lying: readonly Lying[];
}

let job: LayJob | null = null;
let run: LayRun | null = null;
let misfits: readonly { say: string; mm: number }[] = [];

function jobOf(garment: Garment, cloth: Cloth, s: LaySettings): LayJob {
  const repeat = {
    ...(s.repeatAlong > 0 ? { along: s.repeatAlong } : {}),
    ...(s.repeatAcross > 0 ? { across: s.repeatAcross } : {}),
  };
  const plain = cuttingPieces(garment, cloth);
  const striped = s.repeatAlong > 0 || s.repeatAcross > 0;
  const matched = striped
    ? matchStripes(plain, garmentMatches(garment), repeat)
    : { pieces: plain, misfits: [] };
  misfits = matched.misfits;
  return {
    cloth,
    width: s.width,
    selvage: s.selvage,
    fold: s.fold,
    nap: s.nap,
    gap: s.gap,
    pieces: matched.pieces,
    flaws: [],
    pins: s.pins,
    ...(striped ? { repeat } : {}),
  };
}

/** Width of the cloth as it lies on the table. */
function acrossOf({ fold, width }: LayJob, lay: Lay): number {
  if (fold === 'lengthwise' || fold === 'double') return width / 2;
  return fold === 'partial' ? width - lay.folded : width;
}

function picture(of: LayJob, lay: Lay): LayPicture {
  return {
    length: lay.length,
    spread: lay.spread,
    across: acrossOf(of, lay),
    folded: lay.folded,
    density: lay.density,
    lying: lay.placements.map((p): Lying => {
      const piece = of.pieces.find((x) => x.piece === p.piece)!;
      const motion = { angle: (p.rotation * Math.PI) / 180, dx: p.x, dy: p.y, mirror: p.mirrored };
      const ring = (p.as === 'opened' ? openedOutline(piece) : piece.outline).map((q) =>
        movePoint(q, motion),
      );
      const at = {
        x: ring.reduce((s, q) => s + q.x, 0) / ring.length,
        y: ring.reduce((s, q) => s + q.y, 0) / ring.length,
      };
      return { ...p, name: piece.name, number: piece.number, d: ringD(ring), at };
    }),
  };
}

const doings = {
  /** Begins a lay; refuses an impossible one at once, with the width that would do. */
  begin: ({
    garment,
    cloth,
    settings,
  }: {
    garment: Garment;
    cloth: Cloth;
    settings: LaySettings;
  }): LayPicture | null => {
    job = jobOf(garment, cloth, settings);
    run = startLay(job, 1);
    const best = run.best();
    return best && picture(job, best);
  },
  /** Goes on for a while; `share` of the time given is used. */
  go: ({ ms, share }: { ms: number; share: number }): { better: LayPicture | null; done: boolean } => {
    if (!run || !job) return { better: null, done: true };
    const until = performance.now() + ms;
    let better = false;
    while (performance.now() < until && !run.done()) better = run.step(share) || better;
    const best = better ? run.best() : null;
    return { better: best && picture(job, best), done: run.done() };
  },
  /** What an independent check of the best lay finds, and stripes that could not all be met. */
  prove: (): { findings: readonly Finding[]; misfits: readonly { say: string; mm: number }[] } => {
    const best = run?.best();
    return { findings: job && best ? proveLay(job, best) : [], misfits };
  },
};
export type LayDoings = typeof doings;

answerCalls(doings);
