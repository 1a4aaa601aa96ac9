import { Fragment } from 'react';
import { addUp, lengthStyle, shownLength, type LevelPlan, type Shown } from '../../garment/index.ts';
import { Amount } from './amount.tsx';

const ON_SIDE = {
  front: ' in front',
  back: ' at the back',
  both: ' of the pieces that go round',
} as const;

/** `=`, or `≈` where one of the figures is rounded. */
export const equals = (terms: readonly Shown[]): string => (terms.some((term) => term.about) ? '≈' : '=');

export const atEach = (n: number, what: string): string =>
  n === 1 ? `at the one ${what}` : `at each of ${n} ${what}s`;

/** How many of what takes how much: `4 × +11/16 in`; `≈` before it where as written it is not exact, `<` where it is too little to be written. */
export function Times({ n, mm, show, about }: { n: number; mm: number; show: 'in' | 'cm'; about: boolean }) {
  const seen = shownLength(mm, lengthStyle(show)) !== 0;
  return (
    <span className="times">
      {about && seen && '≈ '}
      {n} × <Amount mm={mm} show={show} in={16} signed about={about && !seen} />
    </span>
  );
}

/**
 * What the seams take at each cut edge of a level: one amount where all take the same, else front and back. `≈` where the amounts as written do not
 * make the total as written; edges that take too little to be written are left out beside others that do not.
 * @param props.signed with + and −, for a table; without, as an equation that goes on
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
  const style = lengthStyle(show);
  const terms = groups.map((group) => ({ mm: group.each, times: group.edges }));
  const shown = addUp(leftOver.seams, terms, style).terms;
  const all = groups.map((group, i) => ({ ...group, about: shown[i]!.about }));
  const seen = all.filter((group) => shownLength(group.each, style) !== 0);
  if (signed && all.every((group) => group.each === 0)) return <Amount mm={0} show={show} />;
  return (seen.length > 0 ? seen : all.slice(0, 1)).map((group, i) => (
    <Fragment key={group.side}>
      {signed ? (
        <>
          {i > 0 && ', '}
          <Times n={group.edges} mm={group.each} show={show} about={group.about} />
        </>
      ) : (
        <>
          {i > 0 ? ' and ' : `${equals(shown)} `}
          <Amount mm={Math.abs(group.each)} show={show} in={16} /> {atEach(group.edges, 'cut edge')}
        </>
      )}
      {group.side !== 'all' && ON_SIDE[group.side]}
    </Fragment>
  ));
}
