/** Something that takes longer than half a second: how far it is (null: nobody can say), and a way to stop it. */
export function Waiting({
  words,
  share,
  onStop,
}: {
  words: string;
  share: number | null;
  onStop: () => void;
}) {
  return (
    <div className="row waiting">
      <span>{words}</span>
      <div
        className="progress"
        role="progressbar"
        aria-label={words}
        aria-valuemin={0}
        aria-valuemax={100}
        aria-valuenow={share === null ? undefined : Math.round(share * 100)}
      >
        <i
          className={share === null ? 'unknown' : undefined}
          style={{ inlineSize: share === null ? '100%' : `${Math.max(2, share * 100)}%` }}
        />
      </div>
      <button type="button" className="act" onClick={onStop}>
        Stop
      </button>
    </div>
  );
}
