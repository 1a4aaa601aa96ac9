import { useEffect, useState } from 'react';
import type { PagePicture } from './paper-worker.ts';

/** `B3` lies in the second column, third row. Other labels lie in order. */
function cellOf(label: string): { column: number; row: number } | null {
  const found = /^([A-Z]{1,2})(\d{1,3})$/.exec(label);
  if (!found) return null;
  const column = [...found[1]!].reduce((n, c) => n * 26 + c.charCodeAt(0) - 64, 0);
  return { column, row: Number(found[2]) };
}

/** The pages laid out: the first page apart, tiles where they lie on the floor once joined. */
export function PagesLaid({ pages }: { pages: readonly PagePicture[] }) {
  const tiles = pages.filter((p) => cellOf(p.label));
  const others = pages.filter((p) => !cellOf(p.label));
  const columns = Math.max(1, ...tiles.map((p) => cellOf(p.label)!.column));
  return (
    <>
      <div className="pages-whole">
        {others.map((p) => (
          <PageImage key={p.label} page={p} />
        ))}
      </div>
      {tiles.length > 0 && (
        <div className="pages-grid" style={{ gridTemplateColumns: `repeat(${columns}, minmax(0, 1fr))` }}>
          {tiles.map((p) => {
            const { column, row } = cellOf(p.label)!;
            return (
              <div key={p.label} style={{ gridColumn: column, gridRow: row }}>
                <PageImage page={p} />
              </div>
            );
          })}
        </div>
      )}
    </>
  );
}

function PageImage({ page }: { page: PagePicture }) {
  const [url, setUrl] = useState('');
  useEffect(() => {
    const made = URL.createObjectURL(new Blob([page.svg], { type: 'image/svg+xml' }));
    setUrl(made);
    return () => URL.revokeObjectURL(made);
  }, [page.svg]);
  return (
    <figure className="page">
      {url && (
        <img
          src={url}
          alt={`Page ${page.label}, ${Math.round(page.width)} by ${Math.round(page.height)} mm`}
          loading="lazy"
          width={page.width}
          height={page.height}
        />
      )}
      <figcaption>{page.label}</figcaption>
    </figure>
  );
}
