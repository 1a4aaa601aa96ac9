/** Something that takes longer than half a second: how far it is, and a way to stop it. */
export function Waiting({ words, share, onStop }: { words: string; share: number; onStop: () => void }) {
  return (
    <div className="row waiting">
      <span>{words}</span>
      <div
        className="progress"
        role="progressbar"
        aria-label={words}
        aria-valuemin={0}
        aria-valuemax={100}
        aria-valuenow={Math.round(share * 100)}
      >
        <i style={{ inlineSize: `${Math.max(2, share * 100)}%` }} />
      </div>
      <button type="button" className="act" onClick={onStop}>
        Stop
      </button>
    </div>
  );
}
