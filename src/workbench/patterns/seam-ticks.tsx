import { renderPhrase } from '../../garment/index.ts';
import { pageTell } from '../station/page-tell.ts';
import type { FoundSeam } from './read-worker.ts';

interface Props {
  readonly seams: readonly FoundSeam[];
  /** First choices said to be none. */
  readonly refused: readonly string[];
  /** Second choices taken as well. */
  readonly taken: readonly string[];
  readonly onRefused: (ids: readonly string[]) => void;
  readonly onTaken: (ids: readonly string[]) => void;
}

/** Seams it took for likely, best first, each with its reasons; and the less likely ones to choose from. */
export function SeamTicks({ seams, refused, taken, onRefused, onTaken }: Props) {
  const toggled = (ids: readonly string[], id: string): readonly string[] =>
    ids.includes(id) ? ids.filter((x) => x !== id) : [...ids, id];
  const first = seams.filter((s) => s.rank === 1).sort((a, b) => b.score - a.score);
  const other = seams.filter((s) => s.rank > 1).sort((a, b) => b.score - a.score);
  return (
    <section className="sheet stack tight" aria-labelledby="seams-head">
      <h2 id="seams-head">Seams it took for likely</h2>
      {first.length === 0 && <p>None was likely enough. They can be joined by pointing afterwards.</p>}
      <ul>
        {first.map((s) => (
          <OneSeam
            key={s.id}
            seam={s}
            on={!refused.includes(s.id)}
            onToggle={() => onRefused(toggled(refused, s.id))}
          />
        ))}
      </ul>
      {other.length > 0 && (
        <details>
          <summary>{other.length} less likely ones</summary>
          <ul>
            {other.map((s) => (
              <OneSeam
                key={s.id}
                seam={s}
                on={taken.includes(s.id)}
                onToggle={() => onTaken(toggled(taken, s.id))}
              />
            ))}
          </ul>
        </details>
      )}
    </section>
  );
}

function OneSeam({ seam, on, onToggle }: { seam: FoundSeam; on: boolean; onToggle: () => void }) {
  return (
    <li>
      <label className="tick">
        <input type="checkbox" checked={on} onChange={onToggle} />
        <span>
          {seam.say}{' '}
          <small>
            {howLikely(seam.score)}: {renderPhrase(seam.evidence, pageTell())}
          </small>
        </span>
      </label>
    </li>
  );
}

/** How likely a seam is, in words: nobody counts in hundredths. */
function howLikely(score: number): string {
  if (score >= 0.85) return 'very likely';
  return score >= 0.65 ? 'likely' : 'perhaps';
}
