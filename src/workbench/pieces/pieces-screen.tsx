import { lazy, Suspense, useCallback, useEffect, useMemo, useRef, useState } from 'react';
import { tellOf, type DrawnPiece, type NestedPiece } from '../../garment/index.ts';
import { boxAround, nearestPlace, pathBox, type Box, type Point } from '../../geometry/index.ts';
import type { ReadyBench } from '../station/bench.ts';
import { arrange, type Slot } from '../table/arrange.ts';
import { Grips } from './grips.tsx';
import { MeasureMarks, type Tape } from './measure-marks.tsx';
import { MeasurePanel } from './measure-panel.tsx';
import { PieceEdges, PieceShape, pieceWords } from './piece-shape.tsx';
import { PiecePanel, SeamList } from './piece-panel.tsx';
import { runsThrough } from './run-through.ts';
import { RunPanel, RunView } from './run-view.tsx';
import { NotchTable, SeamWalk } from './seam-walk.tsx';
import { TableView } from '../table/table-view.tsx';
import { foreseen } from '../worker/slopes.ts';
import { useApproach } from './use-approach.ts';
import { useGrips } from './use-grips.ts';

const AlterPanel = lazy(() => import('./alter-panel.tsx'));

const HANDS = [
  { id: 'look', name: 'Look', say: 'Point at a piece, then at an edge.' },
  { id: 'alter', name: 'Alter', say: 'Choose what to change; type the amount or pull the thread.' },
  { id: 'measure', name: 'Measure', say: 'Point at two places; corners and edges catch the tape.' },
  { id: 'walk', name: 'Walk a seam', say: 'One piece rolls along the other, pinned where they meet.' },
  {
    id: 'join',
    name: 'Put together',
    say: 'Pieces edge to edge: see a hem, neckline or armhole run through.',
  },
] as const;
/** Below this the table stands on end and the panel lies under it (screens.css: 60rem). px. */
const NARROW_PX = 960;
/** How broad the table is for its height: beside the panel on a wide screen, over it and 62 % of the screen high on a narrow one. */
const tableAspect = (): number =>
  innerWidth < NARROW_PX ? Math.min(1.5, innerWidth / (0.62 * innerHeight)) : 1.5;
export type Hand = (typeof HANDS)[number]['id'];

/** The pieces on the table: sizes faint, this person's line clear, before and after, and everything one does with hands and tape. */
export default function PiecesScreen({ bench }: { bench: ReadyBench }) {
  const { made, fitting, show, ask } = bench;
  const [hand, setHand] = useState<Hand>(() => handOf(ask));
  const [chosen, setChosen] = useState<string | null>(ask.get('piece'));
  const [edge, setEdge] = useState<string | null>(ask.get('edge'));
  const [seam, setSeam] = useState<string | null>(ask.get('seam'));
  const step = bench.step ?? null;
  const { grips, slopes } = useGrips(bench.held.doc, hand === 'alter' ? step : null);
  // The line follows the hand at once; the worker's own reckoning takes its place when it is there.
  const shown = useMemo(
    () =>
      step && bench.madeOf
        ? foreseen(made.garment, slopes, step, bench.madeOf, fitting).pieces
        : made.garment.pieces,
    [made.garment, slopes, step, bench.madeOf, fitting],
  );
  const [line, setLine] = useState<string | null>(null);
  const [tape, setTape] = useState<Tape>([]);
  const [nest, setNest] = useState(true);
  const [before, setBefore] = useState(true);
  const [goTo, setGoTo] = useState<{ box: Box } | null>(null);
  // As text: what lies on the table is arranged anew only when it says another thing.
  const lying = JSON.stringify(
    made.garment.pieces.map((p): Lying => {
      const parent = parentOf(p, fitting.pattern.pieces);
      return [p.id, parent.id, isTurned(p, parent)];
    }),
  );
  // An asymmetric alteration parts a piece in two: each half has a place of its own, as large as its parent's.
  const onTable = useMemo(
    () =>
      (JSON.parse(lying) as readonly Lying[]).map(([id, of, turned]): NestedPiece => {
        const parent = parentOf({ id: of }, fitting.pattern.pieces);
        return { ...(turned ? turnedOver(parent) : parent), id };
      }),
    [lying, fitting.pattern],
  );
  const [aspect] = useState(tableAspect);
  const table = useMemo(() => arrange(onTable, aspect), [onTable, aspect]);
  const slots = useMemo(() => new Map(table.slots.map((s) => [s.piece, s])), [table]);
  const slotOf = useCallback((p: DrawnPiece): Slot => slots.get(p.id) ?? table.slots[0]!, [slots, table]);
  const nested = useMemo(
    () => (nest ? onTable.map((piece) => ({ piece, slot: slots.get(piece.id)! })) : null),
    [nest, onTable, slots],
  );
  const onMove = useApproach(hand === 'alter' ? step : null, grips, slots, setGoTo);
  const olds = useMemo(() => new Map(made.before.pieces.map((p) => [p.id, p])), [made.before]);
  const piece = shown.find((p) => p.id === chosen);
  const runs = useMemo(() => (hand === 'join' ? runsThrough(made.garment) : []), [hand, made.garment]);
  const run = runs.find((r) => r.id === line) ?? runs[0];

  const choose = useCallback((id: string) => {
    setChosen(id);
    setEdge(null);
  }, []);

  // An address that names a place is followed, also by a page that is open already.
  const followed = useRef(ask);
  useEffect(() => {
    if (followed.current === ask) return;
    followed.current = ask;
    if (ask.size === 0) return;
    setHand(handOf(ask));
    setChosen(ask.get('piece'));
    setEdge(ask.get('edge'));
    setSeam(ask.get('seam'));
  }, [ask]);
  const came = useRef<URLSearchParams | null>(null);
  useEffect(() => {
    const slot = slots.get(ask.get('piece') ?? '');
    // Once: a piece that is parted later, and all that move over for it, do not bring the view back.
    if (!slot || came.current === ask) return;
    came.current = ask;
    setGoTo({ box: slot.box });
  }, [ask, slots]);

  function point(at: Point, target: Element, reach: number): void {
    const on = target.closest('[data-piece]')?.getAttribute('data-piece') ?? null;
    const edgeId = target.closest('[data-edge]')?.getAttribute('data-edge');
    if (hand === 'measure') {
      const found = catchPoint(at, reach, made.garment.pieces, slotOf);
      setTape((t) => (t.length >= 2 ? [found] : [...t, found]));
      return;
    }
    if (edgeId) {
      setEdge(edgeId);
      if (hand === 'walk' && piece) setSeam(seamAt(bench, piece.id, edgeId) ?? seam);
      return;
    }
    setEdge(null);
    setChosen(on);
  }

  const words = HANDS.find((h) => h.id === hand)!.say;
  return (
    <div className="pieces">
      <div className="row spread pieces-tools">
        <div className="choice" role="group" aria-label="What the hand does">
          {HANDS.map((h) => (
            <button
              key={h.id}
              type="button"
              className="act"
              aria-pressed={hand === h.id}
              onClick={() => setHand(h.id)}
            >
              {h.name}
            </button>
          ))}
        </div>
        <span className="small hand-words">{words}</span>
        <div className="row">
          <label className="tick">
            <input type="checkbox" checked={nest} onChange={(e) => setNest(e.target.checked)} /> all sizes,
            faint
          </label>
          <label className="tick">
            <input type="checkbox" checked={before} onChange={(e) => setBefore(e.target.checked)} /> before,
            dotted
          </label>
        </div>
      </div>
      <div className="pieces-body" data-hand={hand}>
        {hand === 'join' ? (
          <RunView runs={runs} run={run} show={show} onRun={setLine} />
        ) : hand === 'walk' ? (
          <SeamWalk bench={bench} seam={seam} onSeam={setSeam} />
        ) : (
          <TableView
            label="Pieces on the table"
            box={table.box}
            nest={nested}
            onPoint={point}
            className={hand}
            goTo={goTo}
            onMove={onMove}
          >
            {shown.map((p) => (
              <PieceShape
                key={p.id}
                piece={p}
                before={before ? olds.get(p.id) : undefined}
                slot={slotOf(p)}
                chosen={p.id === chosen}
                words={pieceWords(p, made.findings, tellOf(bench.fitting.body))}
                onChoose={choose}
              />
            ))}
            {piece && hand !== 'measure' && (
              <PieceEdges
                piece={piece}
                pattern={fitting.pattern}
                slot={slotOf(piece)}
                show={show}
                edge={edge}
                onEdge={setEdge}
              />
            )}
            {hand === 'alter' && step && (
              <Grips bench={bench} step={step} grips={grips} chosen={chosen} slotOf={slotOf} />
            )}
            {hand === 'measure' && <MeasureMarks tape={tape} show={show} />}
          </TableView>
        )}
        <aside className="sheet stack pieces-panel" aria-label="About what is chosen">
          {hand === 'look' && (
            <PiecePanel
              bench={bench}
              piece={piece ?? null}
              edge={edge}
              onEdge={setEdge}
              onChoose={choose}
              onWalk={(s) => (setSeam(s), setHand('walk'))}
            />
          )}
          {hand === 'alter' && (
            <Suspense fallback={<p role="status">Fetching the alterations …</p>}>
              <AlterPanel bench={bench} step={step} onStep={(id) => bench.lookAtStep(id ?? undefined)} />
            </Suspense>
          )}
          {hand === 'measure' && (
            <MeasurePanel
              bench={bench}
              tape={tape}
              onClear={() => setTape([])}
              piece={piece ?? null}
              onChoose={choose}
            />
          )}
          {hand === 'walk' && (
            <>
              <NotchTable bench={bench} seam={seam} />
              <SeamList bench={bench} seam={seam ?? made.seams[0]?.seam.id ?? null} onWalk={setSeam} />
            </>
          )}
          {hand === 'join' && <RunPanel runs={runs} run={run} show={show} onRun={setLine} />}
        </aside>
      </div>
    </div>
  );
}

/** What the hand is to do at a place of the address. */
const handOf = (ask: URLSearchParams): Hand =>
  ask.get('seam') ? 'walk' : ask.get('step') || ask.get('hand') === 'alter' ? 'alter' : 'look';

/** A piece on the table: its id, the id of the pattern's piece that it is or was parted from, and whether it is turned over. */
type Lying = readonly [string, string, boolean];

/** The pattern's piece that a piece on the table is, or was parted from. */
const parentOf = (piece: Pick<DrawnPiece, 'id' | 'of'>, pieces: readonly NestedPiece[]): NestedPiece =>
  pieces.find((p) => p.id === (piece.of ?? piece.id)) ?? pieces[0]!;

const middle = (boxes: readonly Box[]): number => {
  const { minX, maxX } = boxAround(boxes);
  return (minX + maxX) / 2;
};

/** Whether half of a parted piece is its parent turned over: it then lies on the other side of the centre line. */
function isTurned(piece: DrawnPiece, parent: NestedPiece): boolean {
  if (piece.of === undefined) return false;
  const own = middle(piece.edges.map((e) => pathBox(e.path)));
  const drawn = middle(parent.edges.map((e) => pathBox(e.path[0]!)));
  return Math.abs(own + drawn) < Math.abs(own - drawn);
}

/** All sizes of a piece turned over, to be looked at only: its edges still run as they were drawn. */
const turnedOver = (piece: NestedPiece): NestedPiece => ({
  ...piece,
  edges: piece.edges.map((e) => ({
    ...e,
    path: e.path.map((path) => path.map((p) => ({ x: -p.x, y: p.y }))),
  })),
});

/** The place the tape catches: a corner within reach, else the nearest edge within reach, else the point itself. */
function catchPoint(
  at: Point,
  reach: number,
  pieces: readonly DrawnPiece[],
  slotOf: (p: DrawnPiece) => Slot,
): Tape[number] {
  let best: Tape[number] = { at };
  let near = reach;
  for (const piece of pieces) {
    const slot = slotOf(piece);
    const local = { x: at.x - slot.dx, y: at.y - slot.dy };
    for (const edge of piece.edges) {
      const corner = edge.path[0]!;
      const d = Math.hypot(corner.x - local.x, corner.y - local.y);
      // A corner is worth more than an edge at the same distance: hands aim at corners.
      if (d * 0.6 < near) {
        near = d * 0.6;
        best = {
          at: { x: corner.x + slot.dx, y: corner.y + slot.dy },
          piece: piece.id,
          edge: edge.id,
          place: { cubic: 0, t: 0 },
        };
      }
      const hit = nearestPlace(edge.path, local);
      if (hit.distance < near) {
        near = hit.distance;
        best = {
          at: { x: hit.point.x + slot.dx, y: hit.point.y + slot.dy },
          piece: piece.id,
          edge: edge.id,
          place: hit.place,
        };
      }
    }
  }
  return best;
}

function seamAt(bench: ReadyBench, piece: string, edge: string): string | undefined {
  return bench.made.garment.seams.find((s) =>
    [...s.a, ...s.b].some((r) => r.piece === piece && r.edge === edge),
  )?.id;
}
