import { say } from '../../garment/index.ts';
import type { Alteration } from '../alteration.ts';
import { panelFronts } from '../bust-fronts.ts';
import { BUST_REACH, bustWidth, sayBust } from '../bust-words.ts';
import { cut, draw, newChange } from '../change.ts';
import { across, levelHeight } from '../height.ts';
import { inch, lengthParam } from '../param.ts';
import { pullEdges } from '../pull.ts';
import { Refusal } from '../refusal.ts';
import { slidePart } from '../slide.ts';
import { widenLevel } from '../widen-level.ts';
import { pathLength } from '../../geometry/index.ts';
import type { Change } from '../change.ts';
import type { DrawnPiece, Garment } from '../../garment/index.ts';

/** How much the front lengthens per width added: the mean of the slash table (0.454 / 0.5 … 0.831 / 1; trade.md 5.10). */
const LENGTH_PER_WIDTH = 0.87;

const bustHeight = (piece: DrawnPiece): number => {
  const y = levelHeight(piece, 'bust');
  if (y === undefined)
    throw new Refusal('no-level', `${piece.name} has no bust level: draw it first.`, {
      piece: piece.id,
      level: 'bust',
    });
  return y;
};

type Pair = ReturnType<typeof panelFronts>[number];

/** Both panels lengthened through the bust (the side panel at its panel edge only) and half the width let out on each of the two edges. */
function fill(change: Change, { centre, side }: Pair, width: number, longer: number, atPanel: number): void {
  cut(change, centre.id, (piece) => {
    const { left, right } = across(piece, bustHeight(piece));
    return (p) => slidePart(p, { from: right, to: left, atFrom: longer, atTo: longer });
  });
  cut(change, side.id, (piece) => {
    const { left, right } = across(piece, bustHeight(piece));
    return (p) => slidePart(p, { from: right, to: left, atFrom: 0, atTo: atPanel });
  });
  draw(change, centre.id, (piece) => pullEdges(piece, widenLevel(piece, 'panel', 'bust', width / 2, {})));
  draw(change, side.id, (piece) => pullEdges(piece, widenLevel(piece, 'panel', 'bust', -width / 2, {})));
}

/** What the side panel's edge has more than the centre panel's, mm. */
function fullness(garment: Garment, { centre, side, centreEdge, sideEdge }: Pair): number {
  const size = (piece: string, edge: string): number =>
    pathLength(garment.pieces.find((p) => p.id === piece)!.edges.find((e) => e.id === edge)!.path);
  return size(side.id, sideEdge) - size(centre.id, centreEdge);
}

/** The two edges bend differently, so the same length let in does not make both longer alike; a second look is within a hundredth. */
const LOOKS = 2;

/** How much longer the side panel is made at the seam, so that its edge stays with the centre panel's as it was, walked. */
function sideLonger(change: Change, pair: Pair, width: number, longer: number): number {
  let atPanel = longer;
  for (let look = 0; look < LOOKS; look++) {
    const trial = newChange({ ...change.garment, followers: [] });
    fill(trial, pair, width, longer, atPanel);
    atPanel -= fullness(trial.garment, pair) - fullness(change.garment, pair);
  }
  return atPanel;
}

export const bustPanel: Alteration = {
  id: 'bust-panel',
  group: 'bust',
  name: 'Large or small bust, panel seams',
  when: 'The panel seams pull apart or stand empty over the bust.',
  source: 'docs/trade.md 5.10 (x/2 on each panel edge at the bust, lengthened through the apex; memory)',
  params: [
    bustWidth,
    lengthParam('length', 'longer over the bust', {
      default: 0,
      min: -40,
      max: 60,
      blank: `${LENGTH_PER_WIDTH} of the width`,
      limit: {
        most: inch(1),
        say: 'The front hem must still hang level: check it in a trial.',
        source: 'docs/trade.md 5.10',
      },
    }),
  ],
  reach: [
    ...BUST_REACH,
    'both panel edges, walked against each other',
    'side panel: lengthened at the panel seam, nothing at the side',
  ],
  shows: { on: 'panels', params: { width: 22 } },
  make(change, values) {
    const width = values.mm('width');
    const longer = values.maybe('length') ?? width * LENGTH_PER_WIDTH;
    for (const pair of panelFronts(change.garment)) {
      fill(change, pair, width, longer, sideLonger(change, pair, width, longer));
    }
  },
  sentence(values) {
    const width = values.mm('width');
    const longer = values.maybe('length') ?? width * LENGTH_PER_WIDTH;
    return `Front panels: ${sayBust(width)}, ${say(Math.abs(longer))} ${longer < 0 ? 'shorter' : 'longer'} over the bust, nothing at the side seam`;
  },
};
