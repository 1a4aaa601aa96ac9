import type { Cloth, Finding, Garment } from '../../garment/index.ts';
import { movePoint } from '../../geometry/index.ts';
import {
  clothNeeds,
  cuttingOrder,
  layMeasures,
  laySvg,
  longEdges,
  openedOutline,
  projectorPages,
  proveLay,
  startLay,
  type Fold,
  type GrainEnd,
  type Lay,
  type LayJob,
  type LayRun,
  type Placement,
  type Purchase,
} from '../../layout/index.ts';
import { ringD } from '../drawing/path-d.ts';
import { answerCalls } from '../worker/call.ts';
import { jobOf, repeatOf } from './lay-job.ts';
import { offerOf, type LaySettings } from './lay-settings.ts';

/** A piece as it lies, ready to draw: x along the cloth, y across, mm. */
export interface Lying extends Placement {
  readonly name: string;
  readonly number: number;
  readonly d: string;
  readonly at: { readonly x: number; readonly y: number };
  /** Its turn in the order of cutting, from 1. */
  readonly turn: number;
  /** The lower end of its grainline: where to lay the tape. */
  readonly grain: GrainEnd | null;
}
export interface LayPicture {
  readonly length: number;
  readonly spread: number;
  readonly across: number;
  readonly density: number;
  readonly lying: readonly Lying[];
}

/** What to buy at one width, and how it then lies. */
export interface Need {
  readonly purchase: Purchase;
  readonly fold: Fold;
  readonly density: number;
  /** Cloth that the stripes cost, mm. */
  readonly repeatCost?: number;
}

/** The four files a lay can be saved as. */
export type LayFile = 'measured' | 'plain' | 'projector' | 'calibration';

let job: LayJob | null = null;
let run: LayRun | null = null;
let misfits: readonly { say: string; mm: number }[] = [];

function picture(of: LayJob, lay: Lay): LayPicture {
  const grain = layMeasures(of, lay);
  const turns = cuttingOrder(lay);
  return {
    length: lay.length,
    spread: lay.spread,
    across: longEdges(of, lay).across,
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
      const ends = grain.filter((g) => g.piece === p.piece && g.copy === p.copy);
      return {
        ...p,
        name: piece.name,
        number: piece.number,
        d: ringD(ring),
        at,
        turn: turns.findIndex((t) => t.piece === p.piece && t.copy === p.copy) + 1,
        grain: ends.sort((a, b) => a.fromEnd - b.fromEnd)[0] ?? null,
      };
    }),
  };
}

interface Asked {
  readonly garment: Garment;
  readonly cloth: Cloth;
  readonly settings: LaySettings;
}

/** Search for each width and fold of the table of what to buy: enough to compare widths by, short enough to wait for. s. */
const NEED_SECONDS = 1;

const doings = {
  /** Begins a lay; refuses an impossible one at once, with the width that would do. */
  begin: ({ garment, cloth, settings }: Asked): LayPicture | null => {
    ({ job, misfits } = jobOf(garment, cloth, settings));
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
  /** The best lay as a file, true to scale. */
  file: ({ kind, show }: { kind: LayFile; show: 'in' | 'cm' }): string => {
    const best = run?.best();
    if (!job || !best) throw new Error('There is no lay yet to make a file of.');
    if (kind === 'measured' || kind === 'plain')
      return laySvg(job, best, { measures: kind === 'measured', style: show });
    return projectorPages(job, best)[kind === 'projector' ? 'lay' : 'calibration'];
  },
  /** What to buy at each width, open or folded as is shorter, told width by width. */
  needs: (
    { garment, cloth, settings, widths }: Asked & { widths: readonly number[] },
    tell: (told: { share: number; need: Need | null; findings: readonly Finding[] }) => void,
  ): readonly Finding[] => {
    // With stripes, the pieces come with the place at which each must stand on them.
    const { pieces } = jobOf(garment, cloth, settings).job;
    const repeat = repeatOf(settings);
    const all: Finding[] = [];
    for (const [i, width] of widths.entries()) {
      const { needs, findings } = clothNeeds(
        pieces,
        [
          {
            cloth,
            widths: [width],
            folds: [...new Set<Fold>([settings.fold, 'lengthwise'])],
            nap: settings.nap,
            gap: settings.gap,
            selvage: settings.selvage,
            ...offerOf(settings),
            ...(repeat ? { repeat } : {}),
          },
        ],
        { seed: 1, budget: { seconds: NEED_SECONDS, now: () => performance.now() } },
      );
      const best = needs[0];
      all.push(...findings);
      tell({
        share: (i + 1) / widths.length,
        findings,
        need: best
          ? {
              purchase: best.purchase,
              fold: best.lay.fold,
              density: best.lay.density,
              ...(best.repeatCost === undefined ? {} : { repeatCost: best.repeatCost }),
            }
          : null,
      });
    }
    return all;
  },
};
export type LayDoings = typeof doings;

answerCalls(doings);
