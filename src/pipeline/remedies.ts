import type { Finding, Fitting, Garment, LengthPlan, Plan, Step } from '../garment/index.ts';
import { called, len, t, fromShoulder, type Phrase } from '../garment/index.ts';
import type { MeasureId } from '../garment/index.ts';
import { alterationOf, applyStep } from '../alter/index.ts';
import { girthAt } from '../measure/index.ts';
import { pipelineFinding } from './words-table.ts';
import { FINISHED_MM } from '../geometry/index.ts';
import { LENGTHS, WAIST } from './length-alteration.ts';
import type { ByLength } from './length-alteration.ts';

/** What a remedy is chosen by. */
interface Case {
  readonly fitting: Fitting;
  readonly plan: Plan;
  readonly planned: Garment;
  /** As the steps left it. */
  readonly garment: Garment;
}

type Params = Extract<Step, { kind: 'alter' }>['params'];

/** Bust alterations in the order in which they are tried: by what the front is made of. */
const BUST_ENTRIES = ['bust-panel', 'bust-side-dart', 'bust-waist-dart', 'bust-no-dart'];
/** Levels that the side seams cross. */
const BY_SEAMS = new Set(['bust', 'waist', 'high-hip', 'hip', 'hem']);
/** An arm is measured a little below the underarm, where the sleeve gives a hair less: so much still lacking is rounding. */
const HAIR_MM = 1;
/** Amounts are offered to the half millimetre: finer is not drawn. */
const half = (mm: number): number => Math.round(mm * 2) / 2;

/** One alteration and, since it moves the ends of seams, truing after it. */
const stepsOf = (entry: string, params: Params): readonly Step[] => [
  { id: `remedy-${entry}`, kind: 'alter', entry, params },
  { id: `remedy-${entry}-true`, kind: 'true' },
];

/**
 * The findings with what would settle them: a fuller bust by the bust alteration that this front takes, a girth off its target by the side
 * seams or the sleeve, and a note `length-differs` for each length of the body that the pattern misses, less what the steps have given
 * already. What the plan could not do and the steps have done since is no longer told.
 */
export function withRemedies(findings: readonly Finding[], it: Case): readonly Finding[] {
  return [...findings.flatMap((f) => remedied(f, it)), ...lengthFindings(it)];
}

/** What a girth still lacks, mm; undefined where that is not what the finding is about. */
function lacks({ code, where, amount }: Finding, { plan, planned, garment }: Case): number | undefined {
  if (where.level === undefined) return undefined;
  const now = girthAt(garment, where.level);
  if (!now || now.missing.length > 0) return undefined;
  if (code === 'girth-off-target') return -(amount ?? 0);
  if (code === 'nowhere-to-go') {
    const level = plan.levels.find((l) => l.level === where.level);
    return level && level.target - now.girth;
  }
  if (code !== 'sleeve-tight') return undefined;
  const before = girthAt(planned, where.level);
  return before ? (amount ?? 0) - (now.girth - before.girth) : undefined;
}

function remedied(finding: Finding, it: Case): Finding[] {
  if (finding.remedy) return [finding];
  if (finding.code === 'bust-fuller') return [bustRemedy(finding, it)];
  const { level } = finding.where;
  const lack = lacks(finding, it);
  if (level === undefined || lack === undefined) return [finding];
  const settled = finding.code === 'sleeve-tight' ? lack <= HAIR_MM : Math.abs(lack) <= FINISHED_MM;
  if (settled) return [];
  const entry = level === 'upper-arm' ? 'upper-arm' : BY_SEAMS.has(level) ? 'width-seams' : undefined;
  if (!entry) return [finding];
  // A sleeve is never made tighter than it must be by rounding.
  const wanted = finding.code === 'sleeve-tight' ? Math.ceil(lack * 2) / 2 : half(lack);
  const params = entry === 'upper-arm' ? { amount: wanted, cap: 'line' } : { level, total: wanted };
  return [
    offer(finding, entry, params, t`${wanted > 0 ? t`Widen` : t`Narrow`} by ${len(Math.abs(wanted))}`, it),
  ];
}

/** An alteration by the name it has in the catalogue. */
const alterationWord = (entry: string): Phrase => alterationOf(entry)?.name ?? t`${called(entry)}`;

/** The finding with that step as its remedy, where this garment has what the step works on and the amount is one it takes. */
function offer(finding: Finding, entry: string, params: Params, words: Phrase, { garment }: Case): Finding {
  const steps = stepsOf(entry, params);
  const tried = applyStep(garment, steps[0] as Extract<Step, { kind: 'alter' }>);
  if (tried.touched.length === 0 || tried.findings.some((f) => f.severity === 'error')) return finding;
  return { ...finding, remedy: { say: t`${words}: ${alterationWord(entry)}`, steps } };
}

function bustRemedy(finding: Finding, it: Case): Finding {
  const bust = it.plan.levels.find((l) => l.level === 'bust');
  const width = half(((bust?.residual ?? 0) - (bust?.leftOver.altered ?? 0)) / 2);
  if (width * 2 <= FINISHED_MM) return finding;
  for (const entry of BUST_ENTRIES) {
    const offered = offer(finding, entry, { width }, t`Give it ${len(width * 2)} in front`, it);
    if (offered.remedy) return offered;
  }
  return finding;
}

const settles = (how: ByLength | undefined, { fitting }: Case): how is ByLength =>
  how !== undefined &&
  fromShoulder(fitting.pattern.garment) === (how.entry !== 'crotch-depth') &&
  fitting.pattern.levels.some((l) => l.level === how.needs && l.pieces.length > 0);

/** What one alteration should give, by its amounts, and the length that asks for each. */
type Wanted = Readonly<Record<string, { readonly length: LengthPlan; readonly mm: number }>>;

/** Lengths of one alteration together: back and front of the waist are one step. Amounts nobody measured go with the first that was. */
function wantedLengths(it: Case): ReadonlyMap<string, Wanted> {
  const wanted = new Map<string, Wanted>();
  for (const length of it.plan.lengths) {
    const how = LENGTHS[length.measure as MeasureId];
    if (!settles(how, it)) continue;
    const had = wanted.get(how.entry);
    const own = Object.fromEntries(how.params.map((id) => [id, { length, mm: length.residual / how.parts }]));
    wanted.set(how.entry, { ...own, ...had });
  }
  return wanted;
}

function lengthFindings(it: Case): Finding[] {
  return [...wantedLengths(it)].flatMap(([entry, asked]) => {
    const first = Object.values(asked)[0]!;
    // Where only one of front and back was measured, the other goes with it.
    const all = entry === WAIST.entry ? { back: first, front: first, ...asked } : asked;
    const left = Object.fromEntries(
      Object.entries(all).map(([id, { mm }]) => [id, half(mm - given(it.fitting, entry, id))]),
    );
    // The amount is said of the length that asks for it: the front's under the front's name.
    const [id, most] = Object.entries(left).reduce((a, b) => (Math.abs(b[1]) > Math.abs(a[1]) ? b : a));
    const { length } = all[id]!;
    const amount = most * LENGTHS[length.measure as MeasureId]!.parts;
    if (Math.abs(amount) <= FINISHED_MM) return [];
    const measure = length.measure as MeasureId;
    return [
      pipelineFinding(
        'length-differs',
        'note',
        { measure },
        { measure, amount, why: length.why.sentence },
        {
          amount,
          remedy: {
            say: t`${most > 0 ? t`Lengthen` : t`Shorten`}: ${alterationWord(entry)}`,
            steps: stepsOf(entry, left),
          },
        },
      ),
    ];
  });
}

/** What steps of that alteration give already by that amount. */
function given({ steps }: Fitting, entry: string, param: string): number {
  let sum = 0;
  for (const step of steps) {
    if (step.kind === 'alter' && step.entry === entry && !step.off) sum += Number(step.params[param] ?? 0);
  }
  return sum;
}
