import { pageError } from '../words/fault.ts';
import {
  tellIn,
  type Cloth,
  type Finding,
  type Garment,
  type Fold,
  type LaySettings,
} from '../../garment/index.ts';
import {
  type Block,
  clothNeeds,
  cuttingOrder,
  cuttingPieces,
  drawLay,
  type GrainEnd,
  type Lay,
  type LayJob,
  layMeasures,
  laySvg,
  layTogether,
  longEdges,
  type Placement,
  placeWords,
  projectorPages,
  proveLay,
  type Purchase,
  type SavedSearch,
  startLay,
} from '../../layout/index.ts';
import { ringD } from '../drawing/path-d.ts';
import { answerCalls } from '../call/index.ts';
import { browserHands } from './lay-hands.ts';
import { clothChoice, layJob } from '../../desk/index.ts';

/** A piece as it lies, ready to draw: x along the cloth, y across, mm. */
export interface Lying extends Placement {
  readonly name: string;
  readonly number: number;
  readonly d: string;
  /** Where number and name stand within it; null where only the number has room. */
  readonly named: Block | null;
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
export type LayFile = 'measured' | 'plain' | 'projector' | 'test page';

let job: LayJob | null = null;
let best: Lay | null = null;
/** The search to go on from, once one has rested. */
let saved: SavedSearch | null = null;
/** Searches begun on this job: each has seeds of its own, so that going on is not going over the same ground. */
let begun = 0;
let halt = new AbortController();
let searching: Promise<void> = Promise.resolve();
/** Where stripes cannot meet, whatever the lay. */
let apart: readonly Finding[] = [];

/** Heights of letters in the picture, as shares of the cloth's width as it lies: smaller ones could not be read on a screen. */
const NAME_SHARES = [1 / 28, 1 / 34, 1 / 42];

function picture(of: LayJob, lay: Lay): LayPicture {
  const grain = layMeasures(of, lay);
  const turns = cuttingOrder(lay);
  const { across } = longEdges(of, lay);
  const sizes = NAME_SHARES.map((share) => across * share);
  return {
    length: lay.length,
    spread: lay.spread,
    across,
    density: lay.density,
    lying: drawLay(of, lay).pieces.map(
      ({ placement: p, number, name, outline: ring, grain: line }): Lying => {
        const at = {
          x: ring.reduce((s, q) => s + q.x, 0) / ring.length,
          y: ring.reduce((s, q) => s + q.y, 0) / ring.length,
        };
        const ends = grain.filter((g) => g.piece === p.piece && g.copy === p.copy);
        return {
          ...p,
          name,
          number,
          d: ringD(ring),
          named: placeWords([`${number} ${name}`], ring, line, sizes),
          at,
          turn: turns.findIndex((t) => t.piece === p.piece && t.copy === p.copy) + 1,
          grain: ends.sort((a, b) => a.fromEnd - b.fromEnd)[0] ?? null,
        };
      },
    ),
  };
}

interface Asked {
  readonly garment: Garment;
  readonly cloth: Cloth;
  readonly settings: LaySettings;
}

async function searchOn(
  mine: LayJob,
  seconds: number,
  signal: AbortSignal,
  tell: (better: LayPicture) => void,
): Promise<void> {
  const options = { seed: ++begun, seconds, signal, ...(saved ? { from: saved } : {}) };
  const lays = layTogether(mine, options, browserHands());
  for (;;) {
    const { done, value } = await lays.next();
    // A lay begun meanwhile has a best of its own.
    if (mine !== job) {
      await lays.return(undefined as never);
      return;
    }
    if (done) {
      saved = value;
      return;
    }
    if (best && value.length >= best.length) continue;
    best = value;
    tell(picture(mine, value));
  }
}

/** Search for each width and fold of the table of what to buy: enough to compare widths by, short enough to wait for. s. */
const NEED_SECONDS = 1;

const doings = {
  /** Begins a lay; refuses an impossible one at once, with the width that would do. Ends a search under way. */
  begin: ({ garment, cloth, settings }: Asked): LayPicture | null => {
    halt.abort();
    ({ job, findings: apart } = layJob(garment, cloth, settings));
    best = saved = null;
    begun = 0;
    best = startLay(job, 1).best();
    return best && picture(job, best);
  },
  /** Searches on all cores, from where the last search rested, until the time is over, it is stopped or another lay is begun. Tells each better lay. */
  search: async ({ seconds }: { seconds: number }, tell: (better: LayPicture) => void): Promise<void> => {
    const mine = job;
    halt.abort();
    await searching.catch(() => undefined);
    if (!mine || mine !== job) return;
    halt = new AbortController();
    searching = searchOn(mine, seconds, halt.signal, tell);
    await searching;
  },
  /** Stops the search; its best stays. Answers when it has come to rest. */
  stop: async (): Promise<void> => {
    halt.abort();
    await searching.catch(() => undefined);
  },
  /** What an independent check of the best lay finds, and stripes that could not all be met. */
  prove: (): readonly Finding[] => [...apart, ...(job && best ? proveLay(job, best) : [])],
  /** The best lay as a file, true to scale. */
  file: ({ kind, show }: { kind: LayFile; show: 'in' | 'cm' }): string => {
    if (!job || !best) throw pageError('lay-missing');
    if (kind === 'measured' || kind === 'plain')
      return laySvg(job, best, { measures: kind === 'measured', tell: tellIn(show) });
    return projectorPages(job, best, tellIn(show))[kind === 'projector' ? 'lay' : 'testPage'];
  },
  /** What to buy at each width, open or folded as is shorter, told width by width. */
  needs: (
    { garment, cloth, settings, widths }: Asked & { widths: readonly number[] },
    tell: (told: { share: number; need: Need | null; findings: readonly Finding[] }) => void,
  ): readonly Finding[] => {
    const pieces = cuttingPieces(garment, cloth);
    const choice = clothChoice(garment, cloth, settings);
    const all: Finding[] = [];
    for (const [i, width] of widths.entries()) {
      const { needs, findings } = clothNeeds(
        pieces,
        [{ ...choice, widths: [width], folds: [...new Set<Fold>([settings.fold, 'lengthwise'])] }],
        { seed: 1, budget: { seconds: NEED_SECONDS, now: () => performance.now() } },
      );
      const need = needs[0];
      // Where stripes cannot meet is told beside the lay.
      all.push(...findings.filter((f) => f.code !== 'stripes-miss'));
      tell({
        share: (i + 1) / widths.length,
        findings,
        need: need
          ? {
              purchase: need.purchase,
              fold: need.lay.fold,
              density: need.lay.density,
              ...(need.repeatCost === undefined ? {} : { repeatCost: need.repeatCost }),
            }
          : null,
      });
    }
    return all;
  },
};
export type LayDoings = typeof doings;

answerCalls(doings);
