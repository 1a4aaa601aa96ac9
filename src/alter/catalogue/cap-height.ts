import { say } from '../../garment/index.ts';
import type { Alteration } from '../alteration.ts';
import { crown, raiseCrown } from '../cap-follows.ts';
import { draw, tell } from '../change.ts';
import { inch, lengthParam } from '../param.ts';
import { Refusal } from '../refusal.ts';
import { needSleeves } from '../roles.ts';
import { edgesOf } from '../edge-role.ts';
import { pathLength } from '../../geometry/index.ts';

export const capHeight: Alteration = {
  id: 'cap-height',
  group: 'sleeve',
  name: 'Sleeve cap height',
  when: 'Folds run across the cap (too low: raise) or the sleeve stands in a lengthwise fold at the top (too high: lower).',
  source: 'docs/trade.md 5.12 (common practice)',
  params: [
    lengthParam('amount', 'higher', {
      default: inch(0.25),
      min: -40,
      max: 40,
      limit: { most: inch(1), say: 'Check the ease that is left or gained.', source: 'docs/trade.md 3.6' },
    }),
  ],
  reach: ['cap seam: its ease changes and is stated', 'sleeve lining'],
  shows: { on: 'bodice', params: { amount: 20 } },
  make(change, values) {
    const mm = values.mm('amount');
    for (const sleeve of needSleeves(change.garment)) {
      if (crown(sleeve) === undefined)
        throw new Refusal('no-crown', `${sleeve.name}: its cap has no shoulder point to raise.`, {
          piece: sleeve.id,
        });
      let eased = 0;
      draw(change, sleeve.id, (piece) => {
        const after = raiseCrown(piece, mm);
        const size = (p: typeof piece): number =>
          edgesOf(p, 'cap').reduce((sum, e) => sum + pathLength(e.path), 0);
        eased = size(after) - size(piece);
        return after;
      });
      tell(change, {
        code: 'cap-ease-changed',
        severity: Math.abs(eased) > inch(0.5) ? 'warning' : 'note',
        where: { piece: sleeve.id },
        amount: eased,
        message: `Sleeve cap: its seam is ${say(Math.abs(eased))} ${eased < 0 ? 'shorter' : 'longer'}; that is ${eased < 0 ? 'less' : 'more'} ease to set in.`,
      });
    }
    change.capDone = true;
  },
  sentence: (values) =>
    `Sleeve cap: ${values.mm('amount') < 0 ? 'lowered' : 'raised'} by ${say(Math.abs(values.mm('amount')))} at its top`,
};
