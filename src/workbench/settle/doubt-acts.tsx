import { asTaken } from '../../desk/index.ts';
import type { Finding } from '../../garment/index.ts';
import type { ReadyBench } from '../station/bench.ts';
import { go, hrefTo } from '../station/route.ts';
import { docKey } from '../store/kinds.ts';
import { store } from '../store/use-store.ts';
import { whereOf } from './where.ts';

/** Whether it is about something that was guessed when the pattern was brought in. */
export const isDoubt = ({ code }: Finding): boolean => code === 'piece-unsure' || code === 'edge-unsure';

/** A guess is confirmed here; anything else is said on the page of the pattern, and taken over from there. */
export function DoubtActs({ finding, bench }: { finding: Finding; bench: ReadyBench }) {
  const { words } = whereOf(finding, bench);
  const { pattern } = bench.fitting;
  const toPattern = (): void => {
    // Taken out of the cupboard: the fitting has a copy.
    if (!store.state().held.has(docKey('pattern', pattern.id)))
      store.create('pattern', pattern, `From the fitting ${bench.fitting.title}`);
    go(hrefTo('patterns', pattern.id));
  };
  return (
    <>
      {finding.values['role'] !== null && (
        <button
          type="button"
          className="act main"
          onClick={() =>
            bench.change(
              (f) => ({ ...f, pattern: asTaken(f.pattern, finding.where) }),
              `${words}: it is as it was taken`,
            )
          }
        >
          That is right<span className="unseen">: {words}</span>
        </button>
      )}
      <button type="button" className="act" onClick={toPattern}>
        Say what it is<span className="unseen">: {words}</span>
      </button>
    </>
  );
}
