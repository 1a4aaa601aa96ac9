import { useEffect, useId, useRef, useState, type ReactNode } from 'react';
import { addUp, fromShoulder, levelName, lengthStyle, shownLength } from '../../garment/index.ts';
import type { LevelPlan } from '../../garment/index.ts';
import { FINISHED_MM } from '../../geometry/index.ts';
import { Amount } from '../parts/amount.tsx';
import { EachEdge, Times } from '../parts/each-edge.tsx';
import type { ReadyBench } from '../station/bench.ts';
import { BaseChoices, LevelChoices } from './level-choices.tsx';

/** Which columns there are: what alterations give stands there where one gives something, what the pieces measure where there are pieces. */
interface Columns {
  readonly altered: boolean;
  readonly measured: boolean;
}
const HEADS = {
  body: 'body',
  ease: '+ ease',
  garment: '=\u00a0garment',
  size: 'size',
  has: 'it has',
  left: 'left over',
  altered: 'alterations give',
  seam: 'at each seam',
  edge: 'at each cut edge',
  measured: 'pieces measure',
} as const;
type Head = keyof typeof HEADS;

const headsOf = ({ altered, measured }: Columns): readonly Head[] =>
  (Object.keys(HEADS) as Head[]).filter(
    (head) => (head !== 'altered' || altered) && (head !== 'measured' || measured),
  );

/** The plan at a glance: every level a row of figures that add up; what can be chosen and why, one tap below it. */
export function PlanTable({ bench }: { bench: ReadyBench }) {
  const { plan, girths, garment } = bench.made;
  const style = lengthStyle(bench.show);
  const heads = headsOf({
    altered: plan.levels.some((l) => shownLength(l.leftOver.altered, style) !== 0),
    measured: garment.pieces.length > 0,
  });
  return (
    <table className="plan-table">
      <thead>
        <tr>
          <th scope="col">level</th>
          {heads.map((head) => (
            <th key={head} scope="col" className={head === 'size' ? undefined : 'amount'}>
              {HEADS[head]}
            </th>
          ))}
        </tr>
      </thead>
      <BaseRow bench={bench} heads={heads} />
      {plan.levels.map((level) => (
        <LevelRow
          key={level.level}
          level={level}
          girth={girths.find((g) => g.level === level.level)?.girth ?? null}
          bench={bench}
          heads={heads}
        />
      ))}
    </table>
  );
}

const sizeLabel = (bench: ReadyBench, id: string): string =>
  bench.fitting.pattern.chart.sizes.find((s) => s.id === id)?.label ?? id;

function BaseRow({ bench, heads }: { bench: ReadyBench; heads: readonly Head[] }) {
  const { base } = bench.made.plan;
  const own = bench.fitting.choices.size['base'] !== undefined;
  return (
    <Row
      id="base"
      name={
        fromShoulder(bench.fitting.pattern.garment) ? 'neck, shoulder, armhole' : 'where no level decides'
      }
      bench={bench}
      heads={heads}
      cells={{ size: <Size label={sizeLabel(bench, base.size)} own={own} /> }}
    >
      <BaseChoices bench={bench} />
    </Row>
  );
}

const Size = ({ label, own }: { label: string; own: boolean }) => (
  <>
    {label}
    {own && <small> (yours)</small>}
  </>
);

function LevelRow({
  level,
  girth,
  bench,
  heads,
}: {
  level: LevelPlan;
  girth: number | null;
  bench: ReadyBench;
  heads: readonly Head[];
}) {
  const { show, fitting } = bench;
  const { choices } = fitting;
  const style = lengthStyle(show);
  const ease = level.target - level.body;
  const asked = addUp(level.target, [{ mm: level.body }, { mm: ease }], style).terms;
  const left = addUp(level.target, [{ mm: level.finished }, { mm: level.residual }], style).terms;
  const { altered, seams, open } = level.leftOver;
  const perSeam = addUp(seams, [{ mm: level.perSeam, times: level.seams }], style).terms[0]!;
  const off = girth !== null && Math.abs(girth - level.target) > FINISHED_MM;
  const amount = (mm: number, about = false, signed = false): ReactNode => (
    <Amount mm={mm} show={show} in={16} about={about} signed={signed} />
  );
  const none = <small>no seam may move</small>;
  return (
    <Row
      id={level.level}
      name={levelName(level.level, fitting.body.wearer)}
      bench={bench}
      heads={heads}
      cells={{
        body: amount(level.body, asked[0]!.about),
        ease: (
          <>
            {amount(ease, asked[1]!.about)}
            {choices.ease[level.level] !== undefined && <small> (yours)</small>}
          </>
        ),
        garment: <strong>{amount(level.target)}</strong>,
        size: <Size label={sizeLabel(bench, level.size)} own={choices.size[level.level] !== undefined} />,
        has: amount(level.finished, left[0]!.about),
        left: amount(level.residual, left[1]!.about, true),
        altered: amount(altered, false, true),
        seam:
          level.seams > 0 && seams !== 0 ? (
            <Times n={level.seams} mm={level.perSeam} show={show} about={perSeam.about} />
          ) : shownLength(open, style) === 0 ? (
            amount(0)
          ) : (
            none
          ),
        edge: <EachEdge level={level} show={show} signed />,
        measured:
          girth === null ? (
            <small>not to be measured</small>
          ) : off ? (
            <strong>{amount(girth)}</strong>
          ) : (
            amount(girth)
          ),
      }}
    >
      <LevelChoices level={level} bench={bench} />
    </Row>
  );
}

/** A row of figures; its name opens what stands below it. An address that names the level opens it and goes there. */
function Row({
  id,
  name,
  bench,
  heads,
  cells,
  children,
}: {
  id: string;
  name: string;
  bench: ReadyBench;
  heads: readonly Head[];
  cells: Readonly<Partial<Record<Head, ReactNode>>>;
  children: ReactNode;
}) {
  const below = useId();
  const row = useRef<HTMLTableSectionElement>(null);
  const [open, setOpen] = useState(false);
  const asked = bench.ask.get('level') === id;
  useEffect(() => {
    if (!asked) return;
    setOpen(true);
    row.current?.scrollIntoView({ block: 'nearest' });
  }, [asked, bench.ask]);
  return (
    <tbody id={`level-${id}`} className="level-row" ref={row}>
      <tr>
        <th scope="row">
          <button
            type="button"
            className="act quiet why"
            aria-expanded={open}
            aria-controls={open ? below : undefined}
            onClick={() => setOpen(!open)}
          >
            {name}
          </button>
        </th>
        {heads.map((head) => (
          <td
            key={head}
            data-head={HEADS[head]}
            data-empty={cells[head] === undefined || undefined}
            className={head === 'size' ? undefined : 'amount'}
          >
            {cells[head]}
          </td>
        ))}
      </tr>
      {open && (
        <tr className="level-open" id={below}>
          <td colSpan={heads.length + 1}>{children}</td>
        </tr>
      )}
    </tbody>
  );
}
