import { edgeName } from '../../garment/index.ts';
import type { EdgeRef, Pattern, Seam } from '../../garment/index.ts';
import { dropSeam, putJoin, putSeam } from '../../desk/index.ts';
import type { ChangePattern } from './change-pattern.ts';

const SEWN: Readonly<Record<Seam['join']['kind'], string>> = {
  plain: 'plain',
  eased: 'one side eased in',
  gathered: 'one side gathered',
};

/** Every seam in sewing order; whether it may take part when width is spread, and how it is sewn. */
export function SeamList({ pattern, change }: { pattern: Pattern; change: ChangePattern }) {
  const say = (refs: readonly EdgeRef[]): string => refs.map((r) => edgeName(pattern, r)).join(' + ');
  if (pattern.seams.length === 0) return <p className="small">No seams said yet.</p>;
  return (
    <details>
      <summary>
        <h3>
          {pattern.seams.length} {pattern.seams.length === 1 ? 'seam' : 'seams'}
        </h3>
      </summary>
      <div className="wide-table" role="region" aria-label="List of seams" tabIndex={0}>
        <table>
          <thead>
            <tr>
              <th scope="col">Seam</th>
              <th scope="col">One side</th>
              <th scope="col">Other side</th>
              <th scope="col">Sewn</th>
              <th scope="col">May widen</th>
              <th scope="col">
                <span className="unseen">Take apart</span>
              </th>
            </tr>
          </thead>
          <tbody>
            {[...pattern.seams]
              .sort((a, b) => a.order - b.order || a.id.localeCompare(b.id))
              .map((s) => (
                <tr key={s.id}>
                  <th scope="row">{s.name}</th>
                  <td>{say(s.a)}</td>
                  <td>{say(s.b)}</td>
                  <td>
                    <select
                      aria-label={`How ${s.name} is sewn`}
                      value={s.join.kind}
                      onChange={(e) => {
                        const kind = e.target.value as Seam['join']['kind'];
                        change((p) => putJoin(p, s.id, kind), `${s.name}: ${SEWN[kind]}`);
                      }}
                    >
                      {Object.entries(SEWN).map(([kind, words]) => (
                        <option key={kind} value={kind}>
                          {words}
                        </option>
                      ))}
                    </select>
                  </td>
                  <td>
                    <label className="tick">
                      <input
                        type="checkbox"
                        aria-label={`${s.name} may take part when width is spread`}
                        checked={s.movable}
                        onChange={(e) =>
                          change(
                            (p) => putSeam(p, s.id, { movable: e.target.checked }),
                            `${s.name}: ${e.target.checked ? 'may' : 'may not'} widen`,
                          )
                        }
                      />
                    </label>
                  </td>
                  <td>
                    <button
                      type="button"
                      className="act quiet"
                      aria-label={`Take apart ${s.name}`}
                      onClick={() => change((p) => dropSeam(p, s.id), `Took apart ${s.name}`)}
                    >
                      ×
                    </button>
                  </td>
                </tr>
              ))}
          </tbody>
        </table>
      </div>
    </details>
  );
}
