import { useEffect, useRef } from 'react';
import { hrefTo, STATIONS, type Route } from './station/route.ts';

/** The tape: every station of the job in order. Without a fitting, the stations that need one lead to the first page. */
export function JobTape({ route, fitting, open }: { route: Route; fitting?: string; open?: number }) {
  const tape = useRef<HTMLElement>(null);
  // On a narrow screen the tape is drawn along until the station one is at lies in the middle.
  useEffect(() => {
    const [strip, here] = [tape.current, tape.current?.querySelector<HTMLElement>('[aria-current]')];
    if (strip && here) strip.scrollLeft = here.offsetLeft + here.offsetWidth / 2 - strip.clientWidth / 2;
  }, [route.at]);
  return (
    <nav aria-label="The job" className="tape" ref={tape}>
      {STATIONS.map((s) => {
        const needs = 'of' in s;
        const href = needs ? (fitting ? hrefTo(s.id, fitting) : '#/') : hrefTo(s.id);
        const here = route.at === s.id;
        if (needs && !fitting) return null;
        return (
          <span key={s.id} className="station">
            {s.id === 'fit' && <span className="gapmark" aria-hidden="true" />}
            <a href={href} aria-current={here ? 'page' : undefined}>
              {s.name}
              {s.id === 'settle' && open ? (
                <span className="count" aria-label={`${open} open`}>
                  {open}
                </span>
              ) : null}
            </a>
          </span>
        );
      })}
    </nav>
  );
}
