import { chainLength, t, len, percent } from '../../garment/index.ts';
import type { Alteration } from '../entry/alteration.ts';
import { panelFronts } from '../ways/bust-fronts.ts';
import { BUST_REACH, bustWidth, sayBust } from '../ways/bust-words.ts';
import { cut, draw, newChange } from '../follow/change.ts';
import { across, levelHeight } from '../role/height.ts';
import { inch, lengthParam } from '../entry/param.ts';
import { pullEdges } from '../move/pull.ts';
import { Refusal } from '../words/refusal.ts';
import { slidePart } from '../move/slide.ts';
import { widenLevel } from '../ways/widen-level.ts';
import type { Change } from '../follow/change.ts';
import type { DrawnPiece, Garment } from '../../garment/index.ts';

/** How much the front lengthens per width added: the mean of the slash table (0.454 / 0.5 … 0.831 / 1; trade.md 5.10). */
const LENGTH_PER_WIDTH = 0.87;

const bustHeight = (piece: DrawnPiece): number => {
  const y = levelHeight(piece, 'bust');
  if (y === undefined)
    throw new Refusal(
      'no-level',
      { on: { piece: piece.name }, level: 'bust' },
      { piece: piece.id, level: 'bust' },
    );
  return y;
};

type Pair = ReturnType<typeof panelFronts>[number];

/** The centre panel lengthened through the bust, and half the width let out on its panel edge. */
function fillCentre(change: Change, { centre }: Pair, width: number, longer: number): void {
  cut(change, centre.id, (piece) => {
    const { left, right } = across(piece, bustHeight(piece));
    return (p) => slidePart(p, { from: right, to: left, atFrom: longer, atTo: longer });
  });
  draw(change, centre.id, (piece) => pullEdges(piece, widenLevel(piece, 'panel', 'bust', width / 2, {})));
}

/** The side panel lengthened at its panel edge only, and the other half of the width let out there. */
function fillSide(change: Change, { side }: Pair, width: number, atPanel: number): void {
  cut(change, side.id, (piece) => {
    const { left, right } = across(piece, bustHeight(piece));
    return (p) => slidePart(p, { from: right, to: left, atFrom: 0, atTo: atPanel });
  });
  draw(change, side.id, (piece) => pullEdges(piece, widenLevel(piece, 'panel', 'bust', -width / 2, {})));
}

/** What the side panel's edge has more than the centre panel's, mm. */
const fullness = (garment: Garment, { centre, side, centreEdge, sideEdge }: Pair): number =>
  chainLength(garment, [{ piece: side.id, edge: sideEdge }]) -
  chainLength(garment, [{ piece: centre.id, edge: centreEdge }]);

/** The two edges bend differently, so the same length let in does not make both longer alike; a second look is within a hundredth. */
const LOOKS = 2;

/** How much longer the side panel is made at the seam, so that its edge has as much more than the finished centre panel's as it had (`was`). */
function sideLonger(change: Change, pair: Pair, width: number, longer: number, was: number): number {
  let atPanel = longer;
  for (let look = 0; look < LOOKS; look++) {
    const trial = newChange({ ...change.garment, followers: [] });
    fillSide(trial, pair, width, atPanel);
    atPanel -= fullness(trial.garment, pair) - was;
  }
  return atPanel;
}

export const bustPanel: Alteration = {
  id: 'bust-panel',
  group: 'bust',
  name: t`Large or small bust, panel seams`,
  when: t`The panel seams pull apart or stand empty over the bust.`,
  source: 'docs/trade.md 5.10 (x/2 on each panel edge at the bust, lengthened through the apex; memory)',
  params: [
    bustWidth,
    lengthParam('length', t`longer over the bust`, {
      default: 0,
      min: -40,
      max: 60,
      blank: t`${percent(LENGTH_PER_WIDTH)} of the width`,
      limit: {
        most: inch(1),
        say: t`The front hem must still hang level: check it in a trial.`,
        source: 'docs/trade.md 5.10',
      },
    }),
  ],
  reach: [
    ...BUST_REACH,
    t`both panel edges, walked against each other`,
    t`side panel: lengthened at the panel seam, nothing at the side`,
  ],
  shows: { on: 'panels', params: { width: 22 } },
  make(change, values) {
    const width = values.mm('width');
    const longer = values.maybe('length') ?? width * LENGTH_PER_WIDTH;
    for (const pair of panelFronts(change.garment)) {
      const was = fullness(change.garment, pair);
      fillCentre(change, pair, width, longer);
      fillSide(change, pair, width, sideLonger(change, pair, width, longer, was));
    }
  },
  sentence(values) {
    const width = values.mm('width');
    const longer = values.maybe('length') ?? width * LENGTH_PER_WIDTH;
    return t`Front panels: ${sayBust(width)}, ${len(Math.abs(longer))} ${longer < 0 ? t`shorter` : t`longer`} over the bust, nothing at the side seam`;
  },
};
