import { useMemo } from 'react';
import type { AssemblyCorrections } from '../../exchange/index.ts';
import type { Tiles } from './read-worker.ts';

interface Props {
  readonly tiles: Tiles;
  readonly said: AssemblyCorrections;
  readonly onSay: (said: AssemblyCorrections | null) => void;
}

/** How the pages were put together, as a picture; each place can be given another page, the rows another length, a page be left out. */
export function PagesTogether({ tiles, said, onSay }: Props) {
  const { cells, columns, rows, pages, drawn } = tiles;
  const out = said.leaveOut ?? [];
  const left = drawn.filter((i) => !out.includes(i));
  const picture = useMemo(
    () => `data:image/svg+xml;charset=utf-8,${encodeURIComponent(tiles.picture)}`,
    [tiles.picture],
  );
  const inRows = (wide: number): AssemblyCorrections => ({
    ...said,
    cells: left.map((page, i) => ({ page, column: i % wide, row: Math.floor(i / wide) })),
  });
  /** Gives a place another page; the page that lay there takes the other's place. */
  const swap = (column: number, row: number, page: number): void => {
    const here = cells.find((c) => c.column === column && c.row === row);
    const there = cells.find((c) => c.page === page);
    if (here && here === there) return;
    const rest = cells.filter((c) => c !== here && c !== there);
    onSay({
      ...said,
      cells: [
        ...rest,
        { page, column, row },
        ...(here && there ? [{ page: here.page, column: there.column, row: there.row }] : []),
      ],
    });
  };
  return (
    <section className="sheet stack tight" aria-labelledby="tiles-head">
      <h2 id="tiles-head">Do the pages lie rightly together?</h2>
      <p>
        {cells.length > 1
          ? `${cells.length} of ${pages} pages, ${columns} across and ${rows} down; ${Math.round(tiles.quality * 100)} % of the lines that cross a page’s border go on on the next.`
          : `${pages} pages, each a sheet by itself: no lines go on from one to another.`}
      </p>
      <div className="tiles">
        <img src={picture} alt="The pages put together, each with its number" />
        <div className="stack tight">
          <label className="field">
            <span className="label">Pages across</span>
            <input
              type="number"
              min={1}
              max={Math.max(1, left.length)}
              value={columns}
              onChange={(e) => {
                const wide = Math.round(Number(e.target.value));
                if (wide >= 1 && wide <= left.length) onSay(inRows(wide));
              }}
            />
          </label>
          {cells.length > 1 && (
            <div className="scroll">
              <table className="page-grid" aria-label="Which page lies where">
                <tbody>
                  {Array.from({ length: rows }, (_, row) => (
                    <tr key={row}>
                      {Array.from({ length: columns }, (_unused, column) => {
                        const here = cells.find((c) => c.column === column && c.row === row);
                        return (
                          <td key={column}>
                            <select
                              aria-label={`Page in row ${row + 1}, column ${column + 1}`}
                              value={here?.page ?? ''}
                              onChange={(e) =>
                                e.target.value !== '' && swap(column, row, Number(e.target.value))
                              }
                            >
                              {!here && <option value="">–</option>}
                              {left.map((page) => (
                                <option key={page} value={page}>
                                  {page + 1}
                                </option>
                              ))}
                            </select>
                          </td>
                        );
                      })}
                    </tr>
                  ))}
                </tbody>
              </table>
            </div>
          )}
          <details>
            <summary>Leave pages out</summary>
            <div className="row">
              {[...new Set([...drawn, ...out])]
                .sort((a, b) => a - b)
                .map((i) => (
                  <label key={i} className="tick">
                    <input
                      type="checkbox"
                      checked={out.includes(i)}
                      onChange={(e) => {
                        const { cells: _cells, ...rest } = said;
                        onSay({
                          ...rest,
                          leaveOut: e.target.checked ? [...out, i] : out.filter((x) => x !== i),
                        });
                      }}
                    />{' '}
                    page {i + 1}
                  </label>
                ))}
            </div>
          </details>
          {Object.keys(said).length > 0 && (
            <button type="button" className="act" onClick={() => onSay(null)}>
              As it was found
            </button>
          )}
        </div>
      </div>
    </section>
  );
}
