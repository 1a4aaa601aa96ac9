import { renderPhrase } from '../../garment/index.ts';
import { pageTell } from '../station/page-tell.ts';
import { saveFile } from '../parts/save-file.ts';
import { store, useStoreState } from '../store/use-store.ts';

/** Kept documents that this page cannot read: as they are, to be saved to a file or erased; never changed. */
export default function Unread() {
  const { unread } = useStoreState();
  return (
    <section className="sheet stack tight" aria-labelledby="unread-head">
      <h2 id="unread-head">Could not be read</h2>
      <p className="small">
        They lie in this browser’s storage exactly as they were written, perhaps by a newer Pintrue. Save them
        to files before you erase them.
      </p>
      <ul>
        {unread.map((u) => (
          <li key={u.key} className="row spread">
            <span>
              {u.key} <small>{renderPhrase(u.why, pageTell())}</small>
            </span>
            <span className="row">
              <button
                type="button"
                className="act"
                onClick={() =>
                  saveFile(
                    `${u.key.replace('/', ' ')}.json`,
                    JSON.stringify(u.raw, null, 1),
                    'application/json',
                  )
                }
              >
                Save it as a file<span className="unseen">: {u.key}</span>
              </button>
              <button type="button" className="act quiet" onClick={() => void store.erase([u.key])}>
                Erase it<span className="unseen">: {u.key}</span>
              </button>
            </span>
          </li>
        ))}
      </ul>
    </section>
  );
}
