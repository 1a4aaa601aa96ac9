import { t, len, edgesOf } from '../../garment/index.ts';
import type { Alteration } from '../entry/alteration.ts';
import { raiseCrown, solveLength } from '../follow/cap-follows.ts';
import { capLength } from '../ways/cap-settle.ts';
import { draw } from '../follow/change.ts';
import { easeSeams } from '../follow/dart-seams.ts';
import { inch, lengthParam } from '../entry/param.ts';
import { Refusal } from '../words/refusal.ts';
import { needSleeves } from '../role/roles.ts';

export const capEase: Alteration = {
  id: 'cap-ease',
  group: 'sleeve',
  name: t`Sleeve cap ease`,
  when: t`There is too much cloth to ease into the armhole (tight cloth, puckers), or too little.`,
  source: 'docs/trade.md 3.6 and 5.12',
  params: [
    lengthParam('amount', t`more ease (less: negative)`, {
      default: inch(-0.25),
      min: -40,
      max: 40,
      limit: {
        most: inch(0.75),
        say: t`Compare the ease that is left with the range for the cloth (3.6).`,
        source: 'docs/trade.md 3.6',
      },
    }),
  ],
  reach: [t`cap height`, t`sleeve lining`],
  shows: { on: 'bodice', params: { amount: -20 } },
  make(change, values) {
    const mm = values.mm('amount');
    for (const sleeve of needSleeves(change.garment)) {
      draw(change, sleeve.id, (piece) => {
        const wanted = capLength(piece) + mm;
        const up = solveLength((x) => capLength(raiseCrown(piece, x)), wanted, mm);
        if (up === undefined)
          throw new Refusal('cap-not-drawn', { piece: piece.name, old: false }, { piece: piece.id });
        return raiseCrown(piece, up);
      });
      // The wanted ease goes with the drawn one, so that the new cap is not told to be wrong.
      easeSeams(
        change,
        sleeve.id,
        edgesOf(sleeve, 'cap').map((e) => e.id),
        mm,
      );
    }
    change.capDone = true;
  },
  sentence(values) {
    const mm = values.mm('amount');
    return t`Sleeve cap: ${len(Math.abs(mm))} ${mm < 0 ? t`less` : t`more`} ease, by its height`;
  },
};
