import { alterationOf, applyStep } from '../alter/index.ts';
import { called, t, type Finding, type Garment, type Phrase, type Step } from '../garment/index.ts';

export type AlterStep = Extract<Step, { kind: 'alter' }>;
export type Params = AlterStep['params'];

/** One way of settling something: an alteration with its amounts. */
export interface Way {
  readonly entry: string;
  readonly params: Params;
}

/** What is made twice where once would be beyond its limit, since its own words say so: lengths on two lines, and a bust not all in one go. */
const IN_GOES: ReadonlySet<string> = new Set([
  'length-above-waist',
  'sleeve-length',
  'crotch-depth',
  'bust-panel',
  'bust-side-dart',
  'bust-waist-dart',
]);
/** What wants more than this is another size, or a measure to be taken again. */
const MOST_GOES = 3;

/** How many times an alteration is made so that no amount of it is beyond its limit. */
function goesOf({ entry, params }: Way): number {
  if (!IN_GOES.has(entry)) return 1;
  const goes = (alterationOf(entry)?.params ?? []).map((param) => {
    const amount = params[param.id];
    const most = 'limit' in param ? param.limit?.most : undefined;
    return most === undefined || typeof amount !== 'number' ? 1 : Math.ceil(Math.abs(amount) / most - 1e-9);
  });
  return Math.max(1, ...goes);
}

/** The alteration in as many equal goes. */
function inGoes(way: Way): AlterStep[] {
  const goes = goesOf(way);
  const params = Object.fromEntries(
    Object.entries(way.params).map(([id, v]) => [id, typeof v === 'number' ? v / goes : v]),
  );
  return Array.from({ length: goes }, (_, i) => ({
    id: `remedy-${way.entry}${i === 0 ? '' : `-${i + 1}`}`,
    kind: 'alter',
    entry: way.entry,
    params,
  }));
}

/** What making these steps has to say, or undefined where one of them cannot be made. */
function triedOn(garment: Garment, steps: readonly AlterStep[]): readonly Finding[] | undefined {
  const said: Finding[] = [];
  let now = garment;
  for (const step of steps) {
    const tried = applyStep(now, step);
    if (tried.touched.length === 0 || tried.findings.some((f) => f.severity === 'error')) return undefined;
    said.push(...tried.findings);
    now = tried.garment;
  }
  return said;
}

/** An alteration by the name it has in the catalogue. */
const alterationWord = (entry: string): Phrase => alterationOf(entry)?.name ?? t`${called(entry)}`;

/**
 * A finding with a remedy: the first of the ways that this garment takes without going beyond a limit, else the first it takes at all (`within`: none).
 * Truing follows, since the ends of seams move. The finding as it was where there is no way.
 */
export function offer(
  finding: Finding,
  ways: readonly Way[],
  words: Phrase,
  garment: Garment,
  within = false,
): Finding {
  let second: readonly AlterStep[] | undefined;
  for (const way of ways) {
    if (goesOf(way) > MOST_GOES) continue;
    const steps = inGoes(way);
    const said = triedOn(garment, steps);
    if (said === undefined) continue;
    if (!said.some((f) => f.code === 'beyond-limit')) return withSteps(finding, steps, words);
    if (!within) second ??= steps;
  }
  return second ? withSteps(finding, second, words) : finding;
}

function withSteps(finding: Finding, steps: readonly AlterStep[], words: Phrase): Finding {
  const { entry } = steps[0]!;
  const goes = steps.length === 1 ? null : t`, in ${steps.length} equal steps`;
  return {
    ...finding,
    remedy: {
      say: t`${words}: ${alterationWord(entry)}${goes}`,
      steps: [...steps, { id: `remedy-${entry}-true`, kind: 'true' }],
    },
  };
}
