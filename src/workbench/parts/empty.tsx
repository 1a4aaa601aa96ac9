import type { ReactNode } from 'react';

/** A place with nothing in it yet: what it is for, and what to do first. */
export function Empty({
  title,
  picture,
  children,
}: {
  title: string;
  picture?: ReactNode;
  children: ReactNode;
}) {
  return (
    <section className="sheet pinned">
      <div className="empty">
        {picture ? <div aria-hidden="true">{picture}</div> : <Spool />}
        <div className="stack">
          <h2>{title}</h2>
          {children}
        </div>
      </div>
    </section>
  );
}

/** A card of thread with its end free. */
function Spool() {
  return (
    <svg viewBox="0 0 120 120" aria-hidden="true" className="spool">
      <path d="M30 20h60l-8 14v52l8 14H30l8-14V34z" fill="none" stroke="var(--chalk)" strokeWidth="3" />
      {[42, 50, 58, 66, 74, 82].map((y) => (
        <path key={y} d={`M36 ${y}q24 7 48 0`} fill="none" stroke="var(--thread)" strokeWidth="2.4" />
      ))}
      <path
        d="M84 82c20 6 10 22 26 24"
        fill="none"
        stroke="var(--thread)"
        strokeWidth="2.4"
        strokeDasharray="7 4"
      />
    </svg>
  );
}
