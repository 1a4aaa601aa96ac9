import { say } from '../../garment/index.ts';
import type { Alteration } from '../alteration.ts';
import { panelFronts } from '../bust-fronts.ts';
import { BUST_REACH, bustWidth, sayBust } from '../bust-words.ts';
import { cut, draw } from '../change.ts';
import { across, levelHeight } from '../height.ts';
import { inch, lengthParam } from '../param.ts';
import { pullEdges } from '../pull.ts';
import { Refusal } from '../refusal.ts';
import { slidePart } from '../slide.ts';
import { widenLevel } from '../widen-level.ts';
import type { DrawnPiece } from '../../garment/index.ts';

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
    for (const { centre, side } of panelFronts(change.garment)) {
      cut(change, centre.id, (piece) => {
        const { left, right } = across(piece, bustHeight(piece));
        return (p) => slidePart(p, { from: right, to: left, atFrom: longer, atTo: longer });
      });
      cut(change, side.id, (piece) => {
        const { left, right } = across(piece, bustHeight(piece));
        return (p) => slidePart(p, { from: right, to: left, atFrom: 0, atTo: longer });
      });
      draw(change, centre.id, (piece) => pullEdges(piece, widenLevel(piece, 'panel', 'bust', width / 2, {})));
      draw(change, side.id, (piece) => pullEdges(piece, widenLevel(piece, 'panel', 'bust', -width / 2, {})));
    }
  },
  sentence(values) {
    const width = values.mm('width');
    const longer = values.maybe('length') ?? width * LENGTH_PER_WIDTH;
    return `Front panels: ${sayBust(width)}, ${say(Math.abs(longer))} ${longer < 0 ? 'shorter' : 'longer'} over the bust, nothing at the side seam`;
  },
};
