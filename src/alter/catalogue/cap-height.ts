import { t, len, edgesOf } from '../../garment/index.ts';
import { alterFinding } from '../words/words-table.ts';
import type { DrawnPiece } from '../../garment/index.ts';
import type { Alteration } from '../entry/alteration.ts';
import { crown, raiseCrown, solveLength, widenAt } from '../follow/cap-follows.ts';
import { capEaseMeant, capLength, capRoom } from '../ways/cap-settle.ts';
import { draw, tell } from '../follow/change.ts';
import type { Change } from '../follow/change.ts';
import { inch, lengthParam } from '../entry/param.ts';
import { Refusal } from '../words/refusal.ts';
import { needSleeves, pieceOf } from '../role/roles.ts';

/**
 * The crown raised as far as the armhole takes the fuller cap. A lowered cap that would no longer fill its armhole is let out under the arm: a flatter cap is a
 * wider sleeve (docs/trade.md 5.12).
 */
function raised(
  change: Change,
  piece: DrawnPiece,
  mm: number,
  room: { readonly least: number; readonly most: number },
): DrawnPiece {
  const before = capLength(piece);
  const whole = raiseCrown(piece, mm);
  const grown = capLength(whole) - before;
  if (grown > room.most) {
    const up =
      solveLength((x) => capLength(raiseCrown(piece, x)), before + Math.max(0, room.most), mm / 2) ?? 0;
    tell(
      change,
      alterFinding('cap-too-full', 'warning', { piece: piece.id }, { piece: piece.name, up }, { amount: up }),
    );
    return raiseCrown(piece, up);
  }
  if (grown >= room.least) return whole;
  const out = letOut(whole, before + Math.min(0, room.least));
  if (!out) return whole;
  tell(
    change,
    alterFinding(
      'cap-let-out',
      'warning',
      { piece: piece.id },
      { piece: piece.name, by: out.by },
      { amount: out.by },
    ),
  );
  return out.piece;
}

/** Both underarm corners moved out alike until the cap has the wanted length. */
function letOut(piece: DrawnPiece, wanted: number): { piece: DrawnPiece; by: number } | undefined {
  const ends = edgesOf(piece, 'cap').filter((e, _, all) => e === all[0] || e === all[all.length - 1]);
  const wide = (mm: number): DrawnPiece => ends.reduce((p, e) => widenAt(p, e.id, mm), piece);
  const by = ends.length === 2 ? solveLength((mm) => capLength(wide(mm)), wanted, 5) : undefined;
  return by === undefined ? undefined : { piece: wide(by), by };
}

export const capHeight: Alteration = {
  id: 'cap-height',
  group: 'sleeve',
  name: t`Sleeve cap height`,
  when: t`Folds run across the cap (too low: raise) or the sleeve stands in a lengthwise fold at the top (too high: lower).`,
  source: 'docs/trade.md 5.12 (common practice)',
  params: [
    lengthParam('amount', t`higher`, {
      default: inch(0.25),
      min: -40,
      max: 40,
      limit: { most: inch(1), say: t`Check the ease that is left or gained.`, source: 'docs/trade.md 3.6' },
    }),
  ],
  reach: [t`cap seam: its ease changes and is stated`, t`sleeve lining`],
  shows: { on: 'bodice', params: { amount: 20 } },
  make(change, values) {
    for (const sleeve of needSleeves(change.garment)) {
      if (crown(sleeve) === undefined)
        throw new Refusal('no-crown', { piece: sleeve.name }, { piece: sleeve.id });
      draw(change, sleeve.id, (piece) =>
        raised(change, piece, values.mm('amount'), capRoom(change.garment, sleeve.id)),
      );
      capEaseMeant(change, sleeve.id);
      const eased = capLength(pieceOf(change.garment, sleeve.id)) - capLength(sleeve);
      if (Math.abs(eased) < 0.05) continue;
      tell(
        change,
        alterFinding(
          'cap-ease-changed',
          Math.abs(eased) > inch(0.5) ? 'warning' : 'note',
          { piece: sleeve.id },
          { eased, drop: null },
          { amount: eased },
        ),
      );
    }
    change.capDone = true;
  },
  sentence: (values) =>
    t`Sleeve cap: ${values.mm('amount') < 0 ? t`lowered` : t`raised`} by ${len(Math.abs(values.mm('amount')))} at its top`,
};
