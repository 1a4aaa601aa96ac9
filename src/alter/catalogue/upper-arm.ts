import { t, len, edgesOf, hasRole } from '../../garment/index.ts';
import { alterFinding } from '../words/words-table.ts';
import type { DrawnPiece, Edge, Level } from '../../garment/index.ts';
import { pathLength, shareAtPlace } from '../../geometry/index.ts';
import type { Alteration } from '../entry/alteration.ts';
import { raiseCrown, solveLength } from '../follow/cap-follows.ts';
import { capEaseMeant, capLength, capRoom } from '../ways/cap-settle.ts';
import { draw, tell } from '../follow/change.ts';
import { choiceParam, inch, lengthParam, wider } from '../entry/param.ts';
import { atHeight } from '../move/crossing.ts';
import { levelHeight, levelShare } from '../role/height.ts';
import { pullEdges } from '../move/pull.ts';
import type { Pull } from '../move/pull.ts';
import { Refusal } from '../words/refusal.ts';
import { needSleeves } from '../role/roles.ts';

/** An underarm seam shorter than this ends above the elbow: from the underarm to the elbow is some 20 cm (common practice). */
const SHORT_MM = 200;

/** The share of an edge's length at which it crosses a level that runs through its piece; undefined where it does not. */
function shareAt(piece: DrawnPiece, edge: Edge<'one'>, level: Level): number | undefined {
  const met = levelShare(piece, edge, level);
  if (met !== undefined) return met;
  const y = levelHeight(piece, level);
  const hit = y === undefined ? undefined : atHeight(edge.path, y)[0];
  return hit && shareAtPlace(edge.path, hit.place);
}

/**
 * Both underarm corners moved out by half the amount each, as far down as the line that is measured, easing to nothing at the elbow (or the hem where no elbow is
 * known); carried on to the hem of a short sleeve, which lies round the same arm.
 */
function underarmPulls(piece: DrawnPiece, mm: number): Pull[] {
  const n = piece.edges.length;
  return edgesOf(piece, 'underarm').flatMap((edge): Pull[] => {
    const i = piece.edges.indexOf(edge);
    const top = hasRole(piece.edges[(i + 1) % n]!, 'cap')
      ? 1
      : hasRole(piece.edges[(i + n - 1) % n]!, 'cap')
        ? 0
        : undefined;
    if (top === undefined) return [];
    // On the way up the cloth lies left of the seam, so outwards is to the right; the other seam runs down.
    const by = { x: top === 1 ? mm / 2 : -mm / 2, y: 0 };
    const still = { x: 0, y: 0 };
    const clear = (at: number | undefined): at is number => at !== undefined && at > 0.01 && at < 0.99;
    const [arm, elbow] = [shareAt(piece, edge, 'upper-arm'), shareAt(piece, edge, 'elbow')];
    const short = elbow === undefined && pathLength(edge.path) < SHORT_MM;
    return [
      { edge: edge.id, at: top, by },
      ...(clear(arm) && !short ? [{ edge: edge.id, at: arm, by, smooth: true }] : []),
      ...(clear(elbow) ? [{ edge: edge.id, at: elbow, by: still, smooth: true }] : []),
      ...(short ? [{ edge: edge.id, at: 1 - top, by }] : []),
    ];
  });
}

export const upperArm: Alteration = {
  id: 'upper-arm',
  group: 'sleeve',
  name: t`Large or thin upper arm`,
  when: t`The sleeve is tight round the upper arm and rides up, or hangs empty there.`,
  source: 'docs/trade.md 5.12 (triangle tests derived; slash limit memory)',
  params: [
    lengthParam('amount', t`wider round the upper arm`, {
      default: inch(0.5),
      min: -50,
      max: 80,
      limit: {
        most: inch(2),
        say: t`More than ${len(inch(2))} is a larger sleeve with a larger armhole.`,
        source: 'docs/trade.md 5.12 (memory)',
      },
    }),
    choiceParam('cap', t`the cap`, [
      { id: 'height', name: t`keeps its height as far as its ease can take the change` },
      { id: 'line', name: t`keeps its length, its height gives way` },
    ]),
  ],
  reach: [
    t`sleeve lining`,
    t`cap height or cap ease, stated`,
    t`elbow and wrist stay; the hem of a short sleeve goes along`,
  ],
  shows: { on: 'bodice', params: { amount: 50, cap: 'line' } },
  make(change, values) {
    const mm = values.mm('amount');
    for (const sleeve of needSleeves(change.garment)) {
      const before = capLength(sleeve);
      const byHeight = values.word('cap') === 'height';
      let amount = 0;
      let dropped: number | null = null;
      draw(change, sleeve.id, (piece) => {
        const wide = pullEdges(piece, underarmPulls(piece, mm));
        const grown = capLength(wide) - before;
        const room = capRoom(change.garment, sleeve.id);
        const fits = Math.min(Math.max(0, room.most), Math.max(Math.min(0, room.least), grown));
        if (byHeight) {
          amount = fits;
          if (fits === grown) return wide;
        }
        const wanted = before + (byHeight ? fits : 0);
        const drop = solveLength((x) => capLength(raiseCrown(wide, -x)), wanted, grown);
        if (drop === undefined)
          throw new Refusal('cap-not-drawn', { piece: piece.name, old: true }, { piece: piece.id });
        dropped = drop;
        if (!byHeight) amount = drop;
        return raiseCrown(wide, -drop);
      });
      if (byHeight) capEaseMeant(change, sleeve.id);
      const where = { piece: sleeve.id };
      const severity = byHeight && Math.abs(amount) > inch(0.5) ? 'warning' : 'note';
      tell(
        change,
        byHeight
          ? alterFinding('cap-ease-changed', severity, where, { eased: amount, drop: dropped }, { amount })
          : alterFinding('cap-height-changed', severity, where, { drop: amount }, { amount }),
      );
    }
    change.capDone = true;
  },
  sentence(values) {
    const mm = values.mm('amount');
    return t`Sleeve: ${wider(mm)} the upper arm by ${len(Math.abs(mm))}, nothing at the elbow; ${values.word('cap') === 'height' ? t`what its ease cannot take, the height of the cap does` : t`the cap keeps its length`}`;
  },
};
