import { FAINT_CONTRAST, mirrorAbout } from '../../exchange/index.ts';
import { pathD } from '../drawing/path-d.ts';
import type { Tracing } from './tracing.ts';

/** All lines traced so far; the other half of a piece on the fold is shown as a guide. */
export function TracedLines({ tracing: { pieces, done, size, fold } }: { tracing: Tracing }) {
  const foldRun = fold === null ? undefined : size.runs[fold]?.path;
  return (
    <g transform="scale(1 -1)">
      {[...pieces.flatMap((p) => p.sizes), ...done].map((s, i) => (
        <path key={i} className="traced guide" d={s.runs.map((r) => pathD(r.path)).join('')} />
      ))}
      {size.runs.map((r, i) => (
        <path
          key={i}
          className={`traced ${r.contrast < FAINT_CONTRAST ? 'faint' : ''} ${i === fold ? 'on-fold' : ''}`}
          d={pathD(r.path)}
        />
      ))}
      {size.lines.map(({ ends: [a, b] }, i) => (
        <path key={`line ${i}`} className="traced inside" d={`M${a.x} ${a.y}L${b.x} ${b.y}`} />
      ))}
      {foldRun && (
        <path
          className="traced guide"
          d={size.runs
            .filter((_, i) => i !== fold)
            .map((r) => pathD(mirrorAbout(r.path, foldRun[0]!, foldRun.at(-1)!)))
            .join('')}
        />
      )}
    </g>
  );
}
