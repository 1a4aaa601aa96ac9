import { EDGE_NAMES, called, capital, degrees, len, levelWord, t, word } from '../../garment/index.ts';
import type { BodySide, EdgeRole, Half, Phrase } from '../../garment/index.ts';
import type { Missing, Quantity } from '../../measure/index.ts';

const edgeWord = (role: EdgeRole) => word('edge', role, EDGE_NAMES[role]);
const onHalf = (half: Half | undefined): Phrase | null =>
  half === undefined ? null : half === 'front' ? t` in front` : t` at the back`;
const onSide = (side: BodySide | undefined): Phrase | null =>
  side === undefined ? null : side === 'left' ? t` on the left` : t` on the right`;

/** What is measured, in plain words: `girth at the hip, all round`. */
export function quantityWords(q: Quantity): Phrase {
  switch (q.is) {
    case 'girth':
      return t`girth at the ${levelWord(q.level)}${onHalf(q.half) ?? (q.side ? null : t`, all round`)}${onSide(q.side)}`;
    case 'length':
      return t`${q.as === 'up' ? t`height` : t`length`} of the ${edgeWord(q.role)}${onHalf(q.half)}${onSide(q.side)}${q.above ? t` above the ${levelWord(q.above)}` : null}${q.above && q.below ? t` and` : null}${q.below ? t` below the ${levelWord(q.below)}` : null}`;
    case 'shoulder-drop':
      return t`fall of the shoulder seam from neck to tip${onHalf(q.half)}${onSide(q.side)}`;
    case 'across':
      return t`width from centre to armhole${onHalf(q.half)}${onSide(q.side)}`;
    case 'crotch-width':
      return t`width of the leg at the crotch point${onHalf(q.half)}`;
    case 'cap-ease':
      return t`ease of the sleeve cap in its armhole`;
    case 'cap-height':
      return t`height of the sleeve cap`;
    case 'dart':
      return q.as === 'mouth' ? t`mouth of the dart` : t`angle of the dart`;
    case 'darts':
      return t`angles of all darts of the piece together`;
    default:
      return q.as === 'up'
        ? t`height at which the bust point lies`
        : t`distance of the bust point from the centre`;
  }
}

/** What kept a promise from being measured. */
function missingWords(missing: Missing): Phrase {
  switch (missing.missing) {
    case 'level':
      return t`no ${levelWord(missing.level)} line was found${missing.piece ? t` on ${called(missing.piece)}` : null}`;
    case 'edge':
      return t`no ${edgeWord(missing.role)} was found${onHalf(missing.half)}`;
    case 'piece':
      return t`the piece ${called(missing.piece)} was not found`;
    case 'sleeve':
      return t`no sleeve set into an armhole was found`;
    default:
      return t`no bust point was found on the front`;
  }
}

const angular = (q: Quantity): boolean => q.is === 'darts' || (q.is === 'dart' && q.as === 'angle');

/** A change of a quantity: `12 mm more`, `3° less`, `unchanged`. */
export function changeWords(q: Quantity, by: number): Phrase {
  if (Math.abs(by) < 0.05) return t`unchanged`;
  const amount = angular(q) ? degrees(Math.abs(by), 1) : len(Math.abs(by));
  return by > 0 ? t`${amount} more` : t`${amount} less`;
}

/** The sentences of promises. */
export const PROMISE_WORDS = {
  'not-reached': ({ of, wanted, got }: { of: Quantity; wanted: number; got: number }) =>
    Math.abs(wanted) < 0.05
      ? t`${capital(quantityWords(of))}: it should stay as it was and has become ${changeWords(of, got)}.`
      : t`${capital(quantityWords(of))}: wanted ${changeWords(of, wanted)}, reached ${changeWords(of, got)}.`,
  'not-measured': ({ of, missing }: { of: Quantity; missing: Missing }) =>
    t`${capital(quantityWords(of))}: whether it came out as wanted could not be measured, because ${missingWords(missing)}.`,
};
