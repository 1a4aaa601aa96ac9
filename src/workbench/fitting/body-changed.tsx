import { useDoc } from '../store/use-store.ts';
import type { Bench } from '../station/bench.ts';
import { sameBody } from './same-body.ts';

/** The person was measured again since this fitting took their measures: nothing changes under anyone's scissors, it is offered. */
export function BodyChanged({ bench }: { bench: Bench }) {
  const { body } = bench.fitting;
  const person = useDoc('person', body.id)?.doc;
  if (!person || sameBody(person, body)) return null;
  return (
    <div className="ask">
      <p>
        {person.name}’s sheet has changed since this fitting was begun. The fitting still uses the earlier
        measures.
      </p>
      <div className="row">
        <button
          type="button"
          className="act main"
          onClick={() =>
            bench.change((f) => ({ ...f, body: person }), `Took over ${person.name}’s newer measures`)
          }
        >
          Use the newer measures
        </button>
      </div>
    </div>
  );
}
