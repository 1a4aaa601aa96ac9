import { useEffect, useState } from 'react';
import type { DrawingRow } from '../../alter/index.ts';
import { closedD } from '../drawing/path-d.ts';
import { bench as worker } from '../worker/bench.ts';
import type { CatalogueEntry } from '../worker/entry-list.ts';

/** White round the pieces, mm. */
const MARGIN = 8;
const known = new Map<string, DrawingRow>();

/** The drawing of one entry as the worker makes it, fetched once. */
function useDrawing(id: string): DrawingRow | undefined {
  const [, arrived] = useState<string>();
  useEffect(() => {
    if (known.has(id)) return;
    void worker.call('drawing', id).then((row) => {
      known.set(id, row);
      arrived(id);
    });
  }, [id]);
  return known.get(id);
}

/** What an alteration does, on a plain garment with exaggerated amounts: before in dots, after in a whole line. */
export function AlterDrawing({ entry, name }: { entry: CatalogueEntry; name: string }) {
  const row = useDrawing(entry.id);
  if (!row) return null;
  return (
    <svg
      className="piece-figure"
      role="img"
      aria-label={`${name} on a plain garment: before in dots, after in a whole line`}
      viewBox={`${-MARGIN} ${-MARGIN} ${row.width + 2 * MARGIN} ${row.height + 2 * MARGIN}`}
    >
      <g transform="scale(1 -1)">
        {row.pieces.map((p) => (
          <g key={p.piece}>
            {p.before.length > 0 && <path className="before" d={closedD(p.before)} />}
            <path className="own" fillOpacity={0} d={closedD(p.after)} />
          </g>
        ))}
      </g>
    </svg>
  );
}
