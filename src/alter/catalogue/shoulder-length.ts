import { t, len, edgesOf, hasRole } from '../../garment/index.ts';
import { alterFinding } from '../words/words-table.ts';
import type { Alteration } from '../entry/alteration.ts';
import { capEaseOf, eachCap, raiseCrown, solveLength } from '../follow/cap-follows.ts';
import type { Cap } from '../follow/cap-follows.ts';
import { capEaseMeant, capLength, capRoom } from '../ways/cap-settle.ts';
import { draw, tell } from '../follow/change.ts';
import type { Change } from '../follow/change.ts';
import { notchShare } from '../role/height.ts';
import { inch, lengthParam } from '../entry/param.ts';
import { pullEdges } from '../move/pull.ts';
import type { Pull } from '../move/pull.ts';
import { withEdge } from '../role/roles.ts';
import { runEnd } from '../move/run-on.ts';
import type { DrawnPiece } from '../../garment/index.ts';

/** The tip moved along the shoulder line by mm; the armhole redrawn from there to its notch, below which the sleeve is set without ease. */
function moveTip(piece: DrawnPiece, mm: number): Pull[] {
  return edgesOf(piece, 'shoulder').flatMap((shoulder): Pull[] => {
    const n = piece.edges.length;
    const i = piece.edges.indexOf(shoulder);
    const before = piece.edges[(i + n - 1) % n]!;
    const after = piece.edges[(i + 1) % n]!;
    const end = hasRole(before, 'armhole') ? 'start' : hasRole(after, 'armhole') ? 'end' : undefined;
    if (!end) return [];
    const armhole = end === 'start' ? before : after;
    const notch = notchShare(armhole, 1) ?? notchShare(armhole, 2);
    const still: Pull[] =
      notch === undefined ? [] : [{ edge: armhole.id, at: notch, by: { x: 0, y: 0 }, smooth: true }];
    return [runEnd(piece, shoulder.id, end, mm), ...still];
  });
}

/** The cap raised by `mm`, or as far as it can still be set into the armhole, which changed as well; its ease is then as meant. Returns by how much. */
function settle(change: Change, cap: Cap, mm: number): number {
  const room = capRoom(change.before, cap.sleeve);
  let up = mm;
  draw(change, cap.sleeve, (sleeve) => {
    const grown = (x: number): number =>
      capLength(raiseCrown(sleeve, x)) -
      capLength(sleeve) +
      capEaseOf(change.garment, cap) -
      capEaseOf(change.before, cap);
    const whole = grown(mm);
    const fits = Math.min(Math.max(0, room.most), Math.max(Math.min(0, room.least), whole));
    if (fits !== whole) up = solveLength(grown, fits, mm) ?? mm;
    return raiseCrown(sleeve, up);
  });
  capEaseMeant(change, cap.sleeve);
  return up;
}

export const shoulderLength: Alteration = {
  id: 'shoulder-length',
  group: 'shoulder',
  name: t`Longer or shorter shoulder`,
  when: t`The armhole seam hangs over the shoulder tip (narrow shoulders) or bites into the shoulder (broad ones).`,
  source: 'docs/trade.md 5.4 (HERTZ p. 78, seen: shoulder 1/4 in broader, sleeve loses 1/4 in)',
  params: [
    lengthParam('amount', t`each shoulder`, {
      default: 0,
      min: -30,
      max: 30,
      limit: {
        most: inch(0.5),
        say: t`The shoulder tip is rarely moved further than this.`,
        source: 'docs/trade.md 5.0 (memory)',
      },
    }),
  ],
  reach: [
    t`front and back the same`,
    t`armhole from tip to notch`,
    t`sleeve cap: lower for a longer shoulder, higher for a shorter one`,
    t`facings and linings`,
  ],
  shows: { on: 'bodice', params: { amount: -15 } },
  make(change, values) {
    const mm = values.mm('amount');
    for (const half of ['front', 'back'] as const) {
      for (const panel of withEdge(change.garment, half, 'shoulder')) {
        draw(change, panel.id, (piece) => pullEdges(piece, moveTip(piece, mm)));
      }
    }
    // What the shoulder covers the cap need not, and the other way round: its height changes by as much, its ease is stated.
    for (const cap of eachCap(change.garment)) {
      const up = settle(change, cap, -mm);
      const eased = capEaseOf(change.garment, cap) - capEaseOf(change.before, cap);
      tell(
        change,
        alterFinding(
          'cap-covers-arm',
          Math.abs(eased) > inch(0.25) ? 'warning' : 'note',
          { piece: cap.sleeve, seam: cap.seam.id },
          { up, capped: Math.abs(up + mm) > 0.05, covers: mm, eased },
          { amount: up },
        ),
      );
    }
    change.capDone = true;
  },
  sentence(values) {
    const mm = values.mm('amount');
    return t`Shoulder: ${mm < 0 ? t`shorten` : t`lengthen`} ${len(Math.abs(mm))} at the tip, front and back; sleeve cap ${mm < 0 ? t`higher` : t`lower`} by as much`;
  },
};
