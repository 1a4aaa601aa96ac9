import { kindOfChart, tablePattern } from '../../desk/index.ts';
import { markingWords, planFit, plausible } from '../../fit/index.ts';
import {
  calledAll,
  addUp,
  called,
  cautionsFor,
  writeLength,
  type EdgeGroup,
  type Finding,
  type Fitting,
  type Plan,
  renderPhrase,
  t,
  type Phrase,
  type Tell,
  type Term,
  edgeName,
  levelWord,
  GARMENT_KINDS,
  lengthStyle,
} from '../../garment/index.ts';
import {
  CHOICE_OPTIONS,
  CHOICE_WORDS,
  nightwearSaid,
  readChoices,
  readFabric,
  readWearer,
} from '../choices.ts';
import { loadBody, loadChart, loadFitting, loadPattern } from '../load.ts';
import { choiceOption, lengthOption, needOption, numberOption, shareOption, textOption } from '../option.ts';
import { UsageError, type Answer, type Call, type Verb } from '../verb.ts';
import { cautionLines, questionFindings, table } from '../words.ts';

/** Where a group of cut edges lies, in a cell of the table. */
const GROUPS: Readonly<Record<EdgeGroup['side'], Phrase>> = {
  front: t`front`,
  back: t`back`,
  both: t`round`,
  all: t``,
};

const START = [t`level`, t`body`, t`ease`, t`garment`, t`size`, t`size has`, t`left over`];
const END = [t`seams`, t`per seam`, t`edges`, t`per edge`];
const ALTERED = t`altered`;

/** Of whom and of what it is: what cautions follow from. */
type Of = Pick<Fitting, 'body' | 'pattern' | 'choices'>;

/** The plan as a table a sewist reads at the cutting table, then the reasons. */
function tellPlan(plan: Plan, of: Of, marking: readonly Phrase[], tell: Tell): string {
  const { body, pattern } = of;
  const { chart } = pattern;
  // Two units in one cell would make a table nobody can read.
  const show = tell.unit === 'both' ? body.show : tell.unit;
  const bare = (text: string): string => text.replace(/ (in|cm)$/, '');
  const l = (mm: number): string => bare(writeLength(mm, lengthStyle(show)));
  const each = (total: number, terms: readonly Term[]): string[] =>
    addUp(total, terms, lengthStyle(show)).terms.map((term) => bare(term.text));
  const say = (phrase: Phrase): string => renderPhrase(phrase, tell);
  const altered = plan.levels.some((p) => p.leftOver.altered !== 0);
  const head = altered ? [...START, ALTERED, ...END] : [...START, ...END];
  const rows = plan.levels.map((p) => [
    say(t`${levelWord(p.level)}`),
    l(p.body),
    l(p.wantedEase),
    l(p.target),
    p.size,
    l(p.finished),
    l(p.residual),
    ...(altered ? [l(p.leftOver.altered)] : []),
    String(p.seams),
    each(p.leftOver.seams, [{ mm: p.perSeam, times: p.seams }])[0]!,
    String(p.edges),
    each(
      p.leftOver.seams,
      p.groups.map((g) => ({ mm: g.each, times: g.edges })),
    )
      .map((text, i) => (p.groups.length > 1 ? `${say(GROUPS[p.groups[i]!.side])} ${text}` : text))
      .join(', ') || '0',
  ]);
  const why = plan.levels.flatMap((p) => [
    say(
      t`  ${levelWord(p.level)}: ${p.why.target.sentence} ${p.why.size.sentence} ${p.why.residual.sentence}`,
    ),
    say(t`    ease: ${p.why.ease.sentence}`),
    ...(p.split === undefined ? [] : [say(t`    front and back: ${p.split.why.sentence}`)]),
  ]);
  const lengths = plan.lengths.map((p) => `  ${say(p.why.sentence)}`);
  const cautions = cautionLines(of, tell);
  return [
    say(t`Base size ${called(plan.base.size)}. ${plan.base.why.sentence}`),
    ...(chart.source === undefined ? [] : [say(t`Size chart: ${called(chart.source)}.`)]),
    '',
    say(t`All girths all round, in ${show === 'in' ? t`inches` : t`centimetres`}.`),
    table(head.map(say), rows),
    ...(lengths.length === 0 ? [] : ['', say(t`Lengths`), ...lengths]),
    '',
    say(t`To mark it on the tissue`),
    ...marking.map((line) => `  ${renderPhrase(line, tell)}`),
    '',
    say(t`Why`),
    ...why,
    ...(cautions.length === 0 ? [] : ['', ...cautions]),
  ].join('\n');
}

function answer(plan: Plan, of: Of, asked: readonly Finding[]): Answer {
  const { body, pattern } = of;
  const findings = [...plan.findings, ...asked];
  const marking = markingWords(
    plan,
    pattern.chart.sizes.map((s) => s.id),
    pattern.pieces.length === 0 ? undefined : (piece, edge) => edgeName(pattern, { piece, edge }),
  );
  return {
    json: {
      base: plan.base,
      levels: plan.levels,
      lengths: plan.lengths,
      marking,
      cautions: cautionsFor(of).map((c) => c.code),
      findings,
    },
    text: (tell) => tellPlan(plan, of, marking, tell),
    show: body.show,
    wearer: body.wearer,
    findings,
  };
}

async function fromPattern({ options, io, pipeline }: Call, bodyFile: string, file: string): Promise<Answer> {
  const pattern = nightwearSaid(options, await loadPattern(io, file, readWearer(options)));
  const { body, questions } = await loadBody(io, bodyFile, readWearer(options, pattern.wearer));
  const choices = readChoices(options);
  const plan = pipeline.planFor(body, pattern, readFabric(options, pattern.cloth), choices);
  return answer(plan, { body, pattern, choices }, questionFindings([...questions, ...plausible(body)]));
}

async function fromFitting({ io, pipeline }: Call, file: string): Promise<Answer> {
  const fitting = await loadFitting(io, file);
  return answer(pipeline.make(fitting).plan, fitting, questionFindings(plausible(fitting.body)));
}

async function fromChart({ options, io }: Call, bodyFile: string, file: string): Promise<Answer> {
  const said = readWearer(options);
  const chart = await loadChart(io, file, said);
  const { body, questions, findings } = await loadBody(io, bodyFile, said);
  const stretch = shareOption(options, 'cloth-stretch');
  const cloth = stretch === undefined ? { kind: 'woven' as const } : { kind: 'knit' as const, stretch };
  const seams = numberOption(options, 'seams', 1, 40, true);
  const fromAllowance = lengthOption(options, 'from-allowance');
  const hemDepth = lengthOption(options, 'hem-depth');
  const choices = readChoices(options);
  const garment = choiceOption(options, 'garment', GARMENT_KINDS) ?? kindOfChart(chart);
  const plan = planFit({
    body,
    chart,
    fabric: readFabric(options, cloth),
    choices,
    cloth,
    garment,
    ...(seams === undefined ? {} : { seams }),
    ...(fromAllowance === undefined ? {} : { fromAllowance }),
    ...(hemDepth === undefined ? {} : { hemDepth }),
  });
  const pattern = nightwearSaid(options, {
    ...tablePattern('table', 'table', chart, said.wearer),
    cloth,
    garment,
  });
  return answer(plan, { body, pattern, choices }, [
    ...findings,
    ...questionFindings([...questions, ...plausible(body)]),
  ]);
}

export const plan: Verb = {
  name: 'plan',
  usage: [
    'plan --body FILE --chart FILE [--seams N]',
    'plan --body FILE --pattern FILE',
    'plan FITTING.json',
  ],
  about: t`size per level, ease, what is left over and how the seams share it`,
  options: {
    body: { type: 'string' },
    chart: { type: 'string' },
    pattern: { type: 'string' },
    seams: { type: 'string' },
    garment: { type: 'string' },
    'cloth-stretch': { type: 'string' },
    'from-allowance': { type: 'string' },
    'hem-depth': { type: 'string' },
    ...CHOICE_OPTIONS,
  },
  explain: {
    body: t`measurements: CSV ${called('measure,value,unit')}, a body document or a fitting`,
    chart: t`size chart: CSV ${called('measure,kind,unit,<size>,…')} with kind ${called('body')} or ${called('finished')}`,
    pattern: t`pattern document, the id of a sample, or a size table`,
    seams: t`with a chart alone: how many seams share what is left over (2 when not said)`,
    garment: t`with a chart alone: ${calledAll(GARMENT_KINDS)}`,
    'cloth-stretch': t`with a chart alone: the pattern is for a knit that stretches this far`,
    'from-allowance': t`with a chart alone: growth must come out of a seam allowance this wide`,
    'hem-depth': t`with a chart alone: the garment ends this far below the waist`,
    ...CHOICE_WORDS,
  },
  run: async (call) => {
    const [file] = call.words;
    if (call.words.length > 1) throw new UsageError('plan-files');
    if (file !== undefined) {
      if (Object.keys(call.options).some((name) => name !== 'json' && name !== 'units'))
        throw new UsageError('plan-alone');
      return fromFitting(call, file);
    }
    const bodyFile = needOption(call.options, 'body', t`the file with the measurements`);
    const chart = textOption(call.options, 'chart');
    const pattern = textOption(call.options, 'pattern');
    if (pattern !== undefined && chart !== undefined) throw new UsageError('plan-both');
    if (pattern !== undefined) return fromPattern(call, bodyFile, pattern);
    return fromChart(
      call,
      bodyFile,
      needOption(call.options, 'chart', t`the size chart (or ${called('--pattern')} for a pattern)`),
    );
  },
};
