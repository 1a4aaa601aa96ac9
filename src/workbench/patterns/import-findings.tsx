import { tellIn, type Finding } from '../../garment/index.ts';
import { findingSentence } from '../../pipeline/index.ts';
import { Sign } from '../parts/sign.tsx';

/** Heaviest first; as they came within one weight. */
const WEIGHT = { error: 0, warning: 1, note: 2 } as const;

/** Everything that reading the file and making the pattern have to say: all of it, the heaviest first. */
export function ImportFindings({
  read,
  made,
  show,
}: {
  read: readonly Finding[];
  /** Null: not made yet. */
  made: readonly Finding[] | null;
  show: 'in' | 'cm';
}) {
  const say = (finding: Finding): string => findingSentence(finding, tellIn(show));
  const all = [...read, ...(made ?? [])].map((finding) => ({ ...finding, say: say(finding) }));
  const once = all.filter((one, i) => all.findIndex(({ say: other }) => other === one.say) === i);
  return (
    <section className="sheet stack tight" aria-labelledby="told-head">
      <h2 id="told-head">What to know before keeping it</h2>
      {once.length === 0 && made && <p>Nothing stood out.</p>}
      <ul className="stack tight" aria-live="polite">
        {once
          .toSorted((a, b) => WEIGHT[a.severity] - WEIGHT[b.severity])
          .map((one) => (
            <li key={one.say} className="told">
              <Sign severity={one.severity} /> <span>{one.say}</span>
            </li>
          ))}
      </ul>
      {!made && (
        <p className="small">What making the pattern has to say is added here as soon as all is answered.</p>
      )}
    </section>
  );
}
