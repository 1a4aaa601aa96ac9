import { isOpen, type Step } from '../../garment/index.ts';
import type { ReadyBench } from '../station/bench.ts';
import { hrefTo } from '../station/route.ts';

/** Where the work goes on once an alteration was accepted: to its pieces, and to what is open. */
export function WayOn({ bench: { fitting, made }, step }: { bench: ReadyBench; step: Step }) {
  const open = made.findings.filter(isOpen).length;
  return (
    <p className="row">
      <span>Next:</span>
      <a className="act" href={hrefTo('pieces', fitting.id, { step: step.id })}>
        Look at the pieces
      </a>
      <a className="act" href={hrefTo('settle', fitting.id)}>
        {open === 0 ? 'Nothing is open: see for yourself' : `Settle what is open: ${open}`}
      </a>
    </p>
  );
}
