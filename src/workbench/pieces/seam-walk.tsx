import { useEffect, useMemo, useState } from 'react';
import { notchName, type Garment, type Seam } from '../../garment/index.ts';
import { boxAround, movePoint, pathBox, type Box } from '../../geometry/index.ts';
import { outlineD } from '../drawing/path-d.ts';
import type { ReadyBench } from '../station/bench.ts';
import { Amount, amountText } from '../parts/amount.tsx';
import { meantWords } from './walk-words.ts';
import { alongChain, legsLength, chainOf, motionMatrix, seatSeam, type Leg } from './seat.ts';

const calm = (): boolean => matchMedia('(prefers-reduced-motion: reduce)').matches;
const MM_PER_SECOND = 140;

/** A seam walked: one piece rolls along the other, pinned at the place walked to; at its ends the joined lines can be seen to run through. */
export function SeamWalk({
  bench,
  seam: asked,
  onSeam,
}: {
  bench: ReadyBench;
  seam: string | null;
  onSeam: (id: string) => void;
}) {
  const { garment, seams } = bench.made;
  const walk = seams.find((w) => w.seam.id === asked) ?? seams[0];
  const [share, setShare] = useState(0.35);
  const [rolling, setRolling] = useState(false);
  const [even, setEven] = useState(false);
  const seam = walk?.seam;
  const most = walk ? Math.max(walk.a, walk.b) : 1;
  useEffect(() => {
    if (!rolling) return undefined;
    let frame = 0;
    let last = performance.now();
    const tick = (now: number): void => {
      setShare((s) => {
        const next = s + ((now - last) / 1000) * (MM_PER_SECOND / most);
        if (next >= 1) setRolling(false);
        return Math.min(1, next);
      });
      last = now;
      frame = requestAnimationFrame(tick);
    };
    frame = requestAnimationFrame(tick);
    return () => cancelAnimationFrame(frame);
  }, [rolling, most]);
  const seated = useMemo(
    () => (seam ? seatSeam(garment, seam, share, even) : null),
    [garment, seam, share, even],
  );
  const view = useMemo(() => (seam ? viewOf(garment, seam) : null), [garment, seam]);
  if (!walk || !seam || !seated || !view) return <p>This garment has no seams to walk.</p>;
  return (
    <div className="seam-walk">
      <div className="row spread">
        <label className="field">
          <span className="label">Seam</span>
          <select value={seam.id} onChange={(e) => (onSeam(e.target.value), setShare(0))}>
            {seams.map((w) => (
              <option key={w.seam.id} value={w.seam.id}>
                {w.seam.name}
              </option>
            ))}
          </select>
        </label>
        <p className="verdict" role="status">
          {verdict(walk.difference, seam, bench.show)}
        </p>
      </div>
      <div className="row walk-tools">
        <button
          type="button"
          className="act main"
          onClick={() => {
            if (calm()) setShare((s) => (s >= 1 ? 0 : Math.min(1, s + 0.1)));
            else {
              if (share >= 1) setShare(0);
              setRolling(!rolling);
            }
          }}
        >
          {rolling ? 'Hold' : 'Roll'}
        </button>
        <input
          type="range"
          className="slide"
          aria-label="How far it is walked"
          aria-valuetext={amountText(seated.walkedA, bench.show)}
          min={0}
          max={1}
          step={0.005}
          value={share}
          onChange={(e) => (setRolling(false), setShare(Number(e.target.value)))}
        />
        <button type="button" className="act" onClick={() => (setRolling(false), setShare(0))}>
          Edge to edge at the start
        </button>
        <button type="button" className="act" onClick={() => (setRolling(false), setEven(true), setShare(1))}>
          … at the end
        </button>
        <label className="tick">
          <input type="checkbox" checked={even} onChange={(e) => setEven(e.target.checked)} /> ease or gather
          evenly
        </label>
      </div>
      <svg
        viewBox={`${view.minX} ${-view.maxY} ${view.maxX - view.minX} ${view.maxY - view.minY}`}
        className="walk-picture"
        role="img"
        aria-label={`${seam.name}: walked ${amountText(seated.walkedA, bench.show)} of ${amountText(walk.a, bench.show)}`}
      >
        <g transform="scale(1 -1)">
          {seated.a.map(({ piece, motion }, i) => (
            <g key={i} transform={motionMatrix(motion)}>
              <path className={`own rest ${piece.cloth}`} d={outlineD(piece)} />
            </g>
          ))}
          <g transform={motionMatrix(seated.b.motion)}>
            <path className={`own roll ${seated.b.piece.cloth}`} d={outlineD(seated.b.piece)} />
          </g>
          <WalkNotches legs={chainOf(garment, seam.a)} motions={seated.a.map((s) => s.motion)} />
          <WalkNotches
            legs={chainOf(garment, seam.b).filter((l) => l.piece === seated.b.piece)}
            motions={chainOf(garment, seam.b).map(() => seated.b.motion)}
            hollow
          />
          <circle className="pin" cx={seated.at.x} cy={seated.at.y} r={(view.maxX - view.minX) / 75} />
        </g>
      </svg>
    </div>
  );
}

function verdict(difference: number, seam: Seam, show: 'in' | 'cm'): string {
  if (Math.abs(difference) < 0.5)
    return seam.join.kind === 'plain'
      ? 'The two sides are equally long.'
      : `The ${seam.join.kind === 'eased' ? 'ease' : 'gathering'} is as meant.`;
  return `${difference > 0 ? 'The resting side' : 'The rolling side'} is ${amountText(Math.abs(difference), show, { in: 16 })} too long.`;
}

/** Room for the resting pieces and for the rolling one at both ends and in the middle. */
function viewOf(garment: Garment, seam: Seam): Box | null {
  const boxes: Box[] = [];
  for (const share of [0, 0.5, 1]) {
    const seated = seatSeam(garment, seam, share, true);
    if (!seated) return null;
    for (const { piece, motion } of [...seated.a, seated.b]) {
      boxes.push(boxAround(piece.edges.map((e) => pathBox(e.path.map((p) => movePoint(p, motion))))));
    }
  }
  const box = boxAround(boxes);
  return { minX: box.minX - 15, minY: box.minY - 15, maxX: box.maxX + 15, maxY: box.maxY + 15 };
}

function WalkNotches({
  legs,
  motions,
  hollow,
}: {
  legs: readonly Leg[];
  motions: readonly { angle: number; dx: number; dy: number; mirror?: boolean }[];
  hollow?: boolean;
}) {
  return (
    <>
      {legs.flatMap((leg, i) =>
        leg.notches.map((n) => {
          const { at } = alongChain([leg], n.at);
          const p = movePoint(at, motions[i] ?? motions[0]!);
          return (
            <circle
              key={`${leg.piece.id}/${leg.edge}/${n.id}`}
              className={`walk-notch ${hollow ? 'hollow' : ''}`}
              cx={p.x}
              cy={p.y}
              r={hollow ? 5.5 : 3.4}
            />
          );
        }),
      )}
    </>
  );
}

/** What the walk came to at each notch and at the end. */
export function NotchTable({ bench, seam }: { bench: ReadyBench; seam: string | null }) {
  const { show, made } = bench;
  const walk = made.seams.find((w) => w.seam.id === seam) ?? made.seams[0];
  if (!walk) return null;
  const [a, b] = [walk.seam.a, walk.seam.b].map((chain) => legsLength(chainOf(made.garment, chain)));
  const meant = meantWords(walk, show);
  return (
    <table className="notch-table">
      {meant && <caption className="small">{meant}</caption>}
      <thead>
        <tr>
          <th scope="col">From the start to</th>
          <th scope="col" className="amount">
            resting side
          </th>
          <th scope="col" className="amount">
            rolling side
          </th>
          <th scope="col" className="amount">
            longer by
          </th>
          <th scope="col" className="amount">
            off by
          </th>
        </tr>
      </thead>
      <tbody>
        {walk.notches.map((n) => (
          <tr key={n.id}>
            <th scope="row">{notchName(n.id)} notch</th>
            <td className="amount">
              <Amount mm={n.a} show={show} in={16} />
            </td>
            <td className="amount">
              <Amount mm={n.b} show={show} in={16} />
            </td>
            <td className="amount">
              <Amount mm={n.a - n.b} show={show} signed in={16} />
            </td>
            <td className="amount">
              <Amount mm={n.difference} show={show} signed in={16} />
            </td>
          </tr>
        ))}
        <tr>
          <th scope="row">the end</th>
          <td className="amount">
            <Amount mm={a!} show={show} in={16} />
          </td>
          <td className="amount">
            <Amount mm={b!} show={show} in={16} />
          </td>
          <td className="amount">
            <Amount mm={a! - b!} show={show} signed in={16} />
          </td>
          <td className="amount">
            <Amount mm={walk.difference} show={show} signed in={16} />
          </td>
        </tr>
      </tbody>
    </table>
  );
}
