import { checkRoles } from '../../check/index.ts';
import { asTaken } from '../../desk/index.ts';
import { edgeAt, pieceAt, tellIn, type Finding, type Pattern } from '../../garment/index.ts';
import { findingSentence } from '../../pipeline/index.ts';
import { Sign } from '../parts/sign.tsx';
import type { ChangePattern } from './change-pattern.ts';

/** What was guessed when the pattern was brought in and nobody has said since: each to be confirmed, or to be looked at and said. */
export function StillInDoubt(props: {
  pattern: Pattern;
  change: ChangePattern;
  show: 'in' | 'cm';
  onShow: (piece: string, edge: string | null) => void;
}) {
  const { pattern, change, show, onShow } = props;
  const found = checkRoles(pattern.pieces);
  if (found.length === 0) return null;
  return (
    <section className="stack tight" aria-labelledby="doubt-head">
      <h3 id="doubt-head">Still in doubt ({found.length})</h3>
      <ul className="stack tight">
        {found.map((one) => {
          const say = findingSentence(one, tellIn(show));
          const name = nameOf(pattern, one);
          return (
            <li key={`${one.where.piece}/${one.where.edge ?? ''}`} className="told">
              <Sign severity={one.severity} />
              <div className="stack tight">
                <span>{say}</span>
                <div className="row">
                  <button
                    type="button"
                    className="act"
                    onClick={() => onShow(one.where.piece!, one.where.edge ?? null)}
                  >
                    Show me<span className="unseen">: {name}</span>
                  </button>
                  {one.values['role'] !== null && (
                    <button
                      type="button"
                      className="act"
                      onClick={() => change((p) => asTaken(p, one.where), `${name}: it is as it was taken`)}
                    >
                      That is right<span className="unseen">: {name}</span>
                    </button>
                  )}
                </div>
              </div>
            </li>
          );
        })}
      </ul>
    </section>
  );
}

const nameOf = (pattern: Pattern, { where }: Finding): string =>
  [
    pieceAt(pattern, where.piece!)?.name,
    where.edge && edgeAt(pattern, { piece: where.piece!, edge: where.edge })?.edge.name,
  ]
    .filter(Boolean)
    .join(', ');
