import { Fragment } from 'react';
import { addUp, lengthStyle, type LevelPlan, type Shown } from '../../garment/index.ts';
import { Amount } from './amount.tsx';

const ON_SIDE = {
  front: ' in front',
  back: ' at the back',
  both: ' of the pieces that go round',
  all: '',
} as const;

/** `=`, or `≈` where one of the figures is rounded. */
export const equals = (terms: readonly Shown[]): string => (terms.some((term) => term.about) ? '≈' : '=');

export const atEach = (n: number, what: string): string =>
  n === 1 ? `at the one ${what}` : `at each of ${n} ${what}s`;

/**
 * What the seams take at each cut edge of a level: one amount where all take the same, else front and back. `≈` where the amounts as written do not
 * make the total as written.
 * @param props.signed with + and −, for a table; without, as an equation that goes on, with how many edges
 */
export function EachEdge({
  level,
  show,
  signed = false,
}: {
  level: LevelPlan;
  show: 'in' | 'cm';
  signed?: boolean;
}) {
  const { groups, leftOver } = level;
  const terms = groups.map((group) => ({ mm: group.each, times: group.edges }));
  const shown = addUp(leftOver.seams, terms, lengthStyle(show)).terms;
  return groups.map((group, i) => (
    <Fragment key={group.side}>
      {signed ? i > 0 && ', ' : i > 0 ? ' and ' : `${equals(shown)} `}
      <Amount
        mm={signed ? group.each : Math.abs(group.each)}
        show={show}
        in={16}
        signed={signed}
        about={signed && shown[i]!.about}
      />
      {!signed && ` ${atEach(group.edges, 'cut edge')}`}
      {ON_SIDE[group.side]}
    </Fragment>
  ));
}
