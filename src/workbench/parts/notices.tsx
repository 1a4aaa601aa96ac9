import { store, useStoreState } from '../store/use-store.ts';

/** What the page has to say about the person's work: storage, tabs, files. What is said of a place leaves with it; the rest stays until read. */
export function Notices() {
  const { notices, shared, disk } = useStoreState();
  return (
    <div className="notices" role="status" aria-live="polite">
      {shared && (
        <p className="said">
          <Tabs /> This is open in another tab too. Both follow each other: what you do in one appears in the
          other.
        </p>
      )}
      {disk === 'full' && !notices.some((n) => n.kind === 'trouble') && (
        <p className="said">
          <Tabs /> Not everything is saved: the browser’s storage refuses more.
        </p>
      )}
      {notices.map((notice) => (
        <div key={notice.id} className="said">
          <Tabs />
          <p>{notice.say}</p>
          <button className="act quiet" type="button" onClick={() => store.unsay(notice.id)}>
            Got it
          </button>
        </div>
      ))}
    </div>
  );
}

function Tabs() {
  return (
    <svg className="sign" viewBox="0 0 24 24" aria-hidden="true">
      <path d="M4 7h13v13H4zM8 7V3h13v13h-4" fill="none" stroke="currentColor" strokeWidth="2" />
    </svg>
  );
}
