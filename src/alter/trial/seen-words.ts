import { called, len, listOf, t, type Observation, type Phrase } from '../../garment/index.ts';
import { observableOf } from './observe-table.ts';
import { atPlace, lineWord, measured, sightWords } from './sight.ts';

/** A note as a person says it: `waist line at the back sits too low`. */
export function seenWords({ line: id, where, direction }: Observation): Phrase {
  const line = observableOf(id);
  const many = (line?.sights[direction]?.places.length ?? 0) > 1;
  const place = where === 'all' && many ? t` all round` : atPlace(where);
  return t`${line ? lineWord(line) : called(id)}${place} ${sightWords(line, direction)}`;
}

/** What was measured of it: `1 in at the centre, 1/2 in at the side`; undefined where nothing was. */
export function seenAmounts(seen: Observation): Phrase | undefined {
  if (!measured(seen)) return undefined;
  const { centre, side } = seen;
  const [first, second] = observableOf(seen.line)?.sights[seen.direction]?.ends ?? [t``, null];
  const both = second !== null && Boolean(side);
  return t`${listOf([
    ...(centre ? [both || second ? t`${len(centre)} (${first})` : t`${len(centre)}`] : []),
    ...(side && (both || !centre) ? [second ? t`${len(side)} (${second})` : t`${len(side)}`] : []),
  ])}`;
}
