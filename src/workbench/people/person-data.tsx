import { useRef } from 'react';
import type { Body } from '../../garment/index.ts';
import { go } from '../station/route.ts';
import { savePerson } from './save-person.ts';
import { docKey } from '../store/kinds.ts';
import { sayHere } from '../station/say-here.ts';
import { store, useList } from '../store/use-store.ts';

/** What is kept of a person, to take along or to erase for good. */
export function PersonData({ body }: { body: Body }) {
  const dialog = useRef<HTMLDialogElement>(null);
  const fittings = useList('fitting').filter((f) => f.doc.body.id === body.id);
  return (
    <section className="sheet stack" aria-label="This person’s data">
      <h2>Whose data this is</h2>
      <p className="small">
        These measures are {body.name}’s own. They are kept in this browser on this machine and sent nowhere.
        For a child, ask a parent first.
      </p>
      <div className="row">
        <button
          type="button"
          className="act"
          onClick={() =>
            void savePerson(
              body,
              fittings.map((f) => f.doc),
            )
          }
        >
          Save everything about {body.name} to a file
        </button>
        <button type="button" className="act" onClick={() => dialog.current?.showModal()}>
          Erase {body.name} …
        </button>
      </div>
      <dialog ref={dialog} aria-labelledby="erase-title">
        <form method="dialog" className="stack">
          <h2 id="erase-title">Erase everything about {body.name}?</h2>
          <p>
            All measures with their dates,{' '}
            {fittings.length === 0
              ? 'no fittings'
              : fittings.length === 1
                ? 'one fitting'
                : `${fittings.length} fittings`}
            , their versions, photographs and the whole list of changes. This cannot be undone.
          </p>
          <div className="row">
            {/* The first to be reached has the focus when the question opens: what cannot be undone asks for a step more. */}
            <button type="submit" className="act">
              Cancel
            </button>
            <button
              type="submit"
              className="act main"
              onClick={() => {
                void store.erase([docKey('person', body.id), ...fittings.map((f) => f.key)]).then(() => {
                  sayHere(`Everything about ${body.name} is erased.`, 'note', '#/people');
                  go('#/people');
                });
              }}
            >
              Erase
            </button>
          </div>
        </form>
      </dialog>
    </section>
  );
}
