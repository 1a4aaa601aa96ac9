import { t, type Phrase, len } from '../../garment/index.ts';
import type { Alteration } from '../entry/alteration.ts';
import { turnCap } from '../follow/cap-notch.ts';
import { inch, lengthParam } from '../entry/param.ts';
import { moveStrip, needSeams, startsAt } from '../ways/seam-strip.ts';

const LIMIT = {
  most: inch(0.75),
  say: t`More than this is a posture to draft for: look at the back length too.`,
  source: 'docs/trade.md 5.5 (3/4 in at most; memory)',
};

export const forwardShoulder: Alteration = {
  id: 'forward-shoulder',
  group: 'shoulder',
  name: t`Forward shoulder`,
  when: t`The shoulder seam lies behind the top of the shoulder; the sleeve drags towards the front.`,
  source: 'docs/trade.md 5.5 (derived; stooping armhole HERTZ, seen)',
  params: [
    lengthParam('tip', t`forward at the armhole`, { default: inch(0.5), min: -30, max: 30, limit: LIMIT }),
    lengthParam('neck', t`forward at the neck`, { default: 0, min: -20, max: 20, limit: LIMIT }),
  ],
  reach: [
    t`front and back shoulder: what leaves the front joins the back`,
    t`both neck facings, linings`,
    t`the sleeve's shoulder point`,
    t`the collar's shoulder notch, when the neck end moves`,
  ],
  shows: { on: 'bodice', params: { tip: 18, neck: 0 } },
  make(change, values) {
    const tip = values.mm('tip');
    const neck = values.mm('neck');
    for (const found of needSeams(change.garment, 'shoulder')) {
      const fromTip = startsAt(change.garment, found.front, 'armhole');
      moveStrip(change, found, [
        { at: 0, width: fromTip ? tip : neck },
        { at: 1, width: fromTip ? neck : tip },
      ]);
    }
    // The cap turns with the armhole: its whole length and its ease stay (5.5, 3).
    turnCap(change, tip);
    change.capDone = true;
  },
  sentence(values) {
    const tip = values.mm('tip');
    const neck = values.mm('neck');
    const way = (mm: number): Phrase =>
      mm === 0 ? t`nothing` : t`${len(Math.abs(mm))} ${mm < 0 ? t`back` : t`forward`}`;
    return t`Shoulder seam: ${way(tip)} at the armhole, ${way(neck)} at the neck; sleeve cap turned with it`;
  },
};
