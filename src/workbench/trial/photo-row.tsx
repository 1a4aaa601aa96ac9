import { useEffect, useState } from 'react';
import { photoUrl } from './photos.ts';

interface Props {
  readonly ids: readonly string[];
  /** What is seen on them. */
  readonly words: string;
  /** Takes one away for good. */
  readonly onDrop: (id: string) => void;
}

/** Photographs kept on this machine, side by side. */
export function PhotoRow({ ids, words, onDrop }: Props) {
  const [shown, setShown] = useState<readonly { id: string; url: string }[]>([]);
  useEffect(() => {
    let wanted = true;
    let made: { id: string; url: string }[] = [];
    void Promise.all(ids.map(async (id) => ({ id, url: await photoUrl(id) }))).then((found) => {
      made = found.flatMap(({ id, url }) => (url === null ? [] : [{ id, url }]));
      if (wanted) setShown(made);
    });
    return () => {
      wanted = false;
      for (const { url } of made) URL.revokeObjectURL(url);
    };
  }, [ids]);
  return (
    <div className="row">
      {shown.map(({ id, url }, i) => (
        <figure key={id} className="stack tight">
          <img src={url} alt={`Photograph ${i + 1}: ${words}`} className="trial-photo" />
          <button type="button" className="act quiet" onClick={() => onDrop(id)}>
            Delete<span className="unseen"> photograph {i + 1}</span>
          </button>
        </figure>
      ))}
    </div>
  );
}
