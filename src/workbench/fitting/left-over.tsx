import type { ReactNode } from 'react';
import { addUp, lengthStyle, shownLength, writeLeast } from '../../garment/index.ts';
import type { LevelPlan } from '../../garment/index.ts';
import { Amount } from '../parts/amount.tsx';
import { atEach, EachEdge, equals } from '../parts/each-edge.tsx';
import type { ReadyBench } from '../station/bench.ts';

/** What the size leaves over, always in its three forms: confusing seams with cut edges is the commonest slip of the trade. */
export function LeftOver({ level, bench }: { level: LevelPlan; bench: ReadyBench }) {
  const { show } = bench;
  const { altered, seams, open } = level.leftOver;
  const seen = (mm: number): boolean => shownLength(mm, lengthStyle(show)) !== 0;
  if (![altered, seams, open].some(seen))
    return <p className="leftover small">The size meets the target: nothing is left to spread.</p>;
  const amount = (mm: number) => <Amount mm={Math.abs(mm)} show={show} in={16} />;
  return (
    <div className="leftover">
      {seen(altered) && (
        <p>
          The alterations {altered > 0 ? 'let out' : 'take in'} {amount(altered)} all round.
        </p>
      )}
      {seen(seams) && <SeamsTake level={level} show={show} amount={amount} />}
      {seen(open) && (
        <p>
          <strong>
            {open > 0 ? 'Still to let out' : 'Still to take in'}: {amount(open)}
          </strong>{' '}
          all round. No seam may move here.
        </p>
      )}
    </div>
  );
}

/** What the seams take: all round, at each seam, and at each cut edge, which is not the same in front and at the back when they are split. */
function SeamsTake({
  level,
  show,
  amount,
}: {
  level: LevelPlan;
  show: 'in' | 'cm';
  amount: (mm: number) => ReactNode;
}) {
  const total = level.leftOver.seams;
  const style = lengthStyle(show);
  const all = (
    <strong>
      {total > 0 ? 'Let out' : 'Take in'} {amount(total)}
    </strong>
  );
  if (level.groups.every((group) => shownLength(group.each, style) === 0))
    return (
      <p>
        {all} all round: less than {writeLeast(style)} {atEach(level.edges, 'cut edge')}, too little to mark.
      </p>
    );
  const perSeam = addUp(total, [{ mm: level.perSeam, times: level.seams }], style).terms;
  return (
    <p>
      {all} all round {equals(perSeam)} {amount(level.perSeam)} {atEach(level.seams, 'seam')}{' '}
      <EachEdge level={level} show={show} />
    </p>
  );
}
