import { layJob, laySaid, laySettings } from '../../desk/index.ts';
import type { Body, Cloth, Finding, Phrase, Tell } from '../../garment/index.ts';
import {
  called,
  CLOTHS,
  type CuttingTool,
  type Fitting,
  FOLDS,
  type Garment,
  type LaySettings,
  keyWord,
  len,
  listOf,
  percent,
  renderPhrase,
  t,
  tellError,
  tellIn,
} from '../../garment/index.ts';
import {
  cuttingCautions,
  cuttingOrder,
  drawLay,
  type Lay,
  lay as layOut,
  LayImpossible,
  layoutFinding,
  type LayJob,
  layMeasures,
  laySvg,
  layTogether,
  measureWords,
  projectorPages,
  proveLay,
} from '../../layout/index.ts';
import { writeDxfStrokes } from '../../exchange/index.ts';
import { LAY_OPTIONS, LAY_WORDS, readLay, typed, type LaySaid } from '../lay-options.ts';
import { loadPieces } from '../load.ts';
import { choiceOption, lengthOption, needOption, textOption } from '../option.ts';
import { UsageError, type Answer, type Call, type Verb } from '../verb.ts';
import { wroteWords } from '../step-words.ts';
import { lines, table } from '../words.ts';

/** How long the search goes on when nothing is said, seconds. */
const SECONDS = 20;
const AS: Readonly<Record<Lay['placements'][number]['as'], Phrase>> = {
  single: t`once`,
  pair: t`through both layers, a left and a right`,
  'on-fold': t`on the fold`,
  opened: t`opened out, whole`,
};
const HEAD = [t``, t`piece`, t`as`, t`its grainline`];
/** Least time between two messages about a better lay, ms. */
const QUIET = 1_000;

/** What is to be laid: what the fitting keeps of the cloth, with what was typed before it. @throws UsageError when nothing is cut of that cloth */
function jobOf(
  fitting: Fitting,
  garment: Garment,
  cloth: Cloth,
  said: Partial<LaySettings>,
): { job: LayJob; settings: LaySettings; findings: readonly Finding[] } {
  if (!garment.pieces.some((p) => p.cloth === cloth))
    throw new UsageError('cloth-unused', { cloth, used: [...new Set(garment.pieces.map((p) => p.cloth))] });
  const { settings, findings } = laySaid(laySettings(fitting, cloth), said);
  const asked = layJob(garment, cloth, settings);
  return { job: asked.job, settings, findings: [...findings, ...asked.findings] };
}

/** What to mind with the tool that the fitting names. Without one: the drawing goes to a machine whose kind is not said, the picture to a table. */
function cautionsOf(fitting: Fitting, cloth: Cloth, out: string): Phrase[] {
  const { tool, fibre } = fitting.lay?.[cloth] ?? {};
  const synthetic = fibre === undefined || fibre === 'unknown' ? null : fibre === 'synthetic';
  const tools: CuttingTool[] = tool ? [tool] : /\.dxf$/i.test(out) ? ['knife-plotter', 'laser'] : ['rotary'];
  return tools.flatMap((t) => cuttingCautions(t, synthetic));
}

const soFar = ({ length, density }: Lay): Phrase =>
  t`so far ${len(length)}, ${percent(density, 1)} of the cloth used`;

/** The best lay in the time given, by all cores; each better one is told as it comes. A count of sweeps is one thread's, the same everywhere. */
async function search(job: LayJob, said: LaySaid, { io, tell }: Call): Promise<Lay | null> {
  let best: Lay | null = null;
  let told = -QUIET;
  const better = (lay: Lay): void => {
    best = lay;
    if (io.now() - told < QUIET) return;
    told = io.now();
    io.err(`${renderPhrase(soFar(lay), tell())}\n`);
  };
  const { seed, budget } = said.search;
  if (io.layHands && 'seconds' in budget) {
    try {
      for await (const lay of layTogether(job, { seed, seconds: budget.seconds }, io.layHands())) better(lay);
      return best;
    } catch (error) {
      if (error instanceof LayImpossible) throw error;
      const why = error instanceof Error ? tellError(error, tell()) : String(error);
      io.err(`${renderPhrase(t`The search goes on in one thread: ${called(why)}`, tell())}\n`);
    }
  }
  for (const lay of layOut(job, said.search)) better(lay);
  return best;
}

function impossible(job: LayJob, error: LayImpossible): Answer {
  const finding = error.finding('error');
  return {
    json: {
      cloth: job.cloth,
      width: job.width,
      length: null,
      density: null,
      placements: [],
      findings: [finding],
    },
    text: lines(t`It does not fit. Nothing was written.`),
    findings: [finding],
  };
}

function tell(
  job: LayJob,
  lay: Lay,
  findings: readonly Finding[],
  wrote: readonly string[],
  cautions: readonly Phrase[],
  show: Body['show'],
): Answer {
  const placements = lay.placements.map(({ piece, copy, x, y, rotation, mirrored, as }) => ({
    piece,
    copy,
    x,
    y,
    rotation,
    mirrored,
    as,
  }));
  const grain = layMeasures(job, lay);
  const rows = (tell: Tell): string[][] =>
    cuttingOrder(lay).map((p, i) => {
      const ends = grain.filter((g) => g.piece === p.piece && g.copy === p.copy);
      const piece = job.pieces.find((c) => c.piece === p.piece);
      return [
        String(i + 1),
        piece === undefined ? p.piece : `${piece.number} ${piece.name}`,
        renderPhrase(AS[p.as], tell),
        renderPhrase(t`${listOf(measureWords(ends))}`, {
          ...tell,
          ...(tell.unit === 'both' ? { unit: show } : {}),
          fraction: 8,
        }),
      ];
    });
  const text = (tell: Tell): string => {
    const say = (phrase: Phrase): string => renderPhrase(phrase, tell);
    return [
      say(
        t`${keyWord('cloth', lay.cloth)}: ${len(lay.length)} of cloth ${len(lay.width)} wide, folded: ${keyWord('fold', lay.fold)}; ${percent(lay.density, 1)} of it used.`,
      ),
      '',
      say(t`In the order of cutting`),
      table(HEAD.map(say), rows(tell)),
      '',
      ...cautions.map(say),
      '',
      ...wrote.map((file) => say(wroteWords(file))),
    ].join('\n');
  };
  return {
    json: {
      cloth: lay.cloth,
      width: lay.width,
      fold: lay.fold,
      length: lay.length,
      density: lay.density,
      placements,
      findings,
      wrote,
    },
    text,
    show,
    findings,
  };
}

async function run(call: Call): Promise<Answer> {
  const { words, options, io, pipeline } = call;
  const [file] = words;
  if (file === undefined || words.length > 1)
    throw new UsageError('one-file', { verb: 'lay', takes: 'fitting' });
  const out = needOption(
    options,
    'out',
    t`the picture to write, ${called('LAY.svg')} or ${called('LAY.dxf')}`,
  );
  if (!/\.(svg|dxf)$/i.test(out))
    throw new UsageError('out-ending', { endings: ['.svg', '.dxf'], given: out });
  const cloth = choiceOption(options, 'cloth', CLOTHS) ?? 'shell';
  const lay = readLay(options, io, SECONDS);
  const said = {
    ...lay.settings,
    ...typed({ width: lengthOption(options, 'width'), fold: choiceOption(options, 'fold', FOLDS) }),
  };
  const fitting = await loadPieces(io, file);
  const projector = textOption(options, 'projector');
  const testPage = textOption(options, 'test-page') ?? projector?.replace(/(\.svg)?$/i, '-test-page.svg');
  const wrote = [out, projector, testPage].filter((path) => path !== undefined);
  for (const path of wrote) await io.mustBeWritable(path);
  const { job, settings, findings } = jobOf(fitting, pipeline.make(fitting).garment, cloth, said);
  try {
    const found = await search(job, lay, call);
    if (found === null) {
      const none = layoutFinding('no-lay-found', 'error', {}, { on: null });
      return {
        json: { cloth, width: settings.width, length: null, density: null, placements: [], findings: [none] },
        text: lines(t`Nothing was written.`),
        findings: [none],
      };
    }
    const proof = proveLay(job, found);
    await io.writeFile(
      out,
      /\.dxf$/i.test(out)
        ? writeDxfStrokes(drawLay(job, found).strokes)
        : laySvg(job, found, { measures: true, tell: tellIn(fitting.body.show) }),
    );
    if (testPage !== undefined) {
      const pages = projectorPages(job, found, tellIn(fitting.body.show));
      if (projector !== undefined) await io.writeFile(projector, pages.lay);
      await io.writeFile(testPage, pages.testPage);
    }
    return tell(
      job,
      found,
      [...findings, ...proof],
      wrote,
      cautionsOf(fitting, cloth, out),
      fitting.body.show,
    );
  } catch (error) {
    if (error instanceof LayImpossible) return impossible(job, error);
    throw error;
  }
}

export const lay: Verb = {
  name: 'lay',
  usage: [
    'lay FITTING.json [--width 1400mm] [--cloth shell] [--fold none|lengthwise|crosswise] --out LAY.svg',
  ],
  about: t`lay the pieces on cloth: a picture with measurements, proven free of overlaps`,
  options: {
    width: { type: 'string' },
    out: { type: 'string' },
    cloth: { type: 'string' },
    fold: { type: 'string' },
    projector: { type: 'string' },
    'test-page': { type: 'string' },
    ...LAY_OPTIONS,
  },
  explain: {
    width: t`how wide the cloth is, selvage to selvage, with its unit; as the fitting keeps it, else ${called('1400mm')} or ${called('54in')}`,
    out: t`the lay to write, true to scale: ${called('LAY.svg')} with measurements, or ${called('LAY.dxf')} with lines by layer for a plotter or cutter`,
    cloth: t`${called('shell')} (default), ${called('lining')}, ${called('interfacing')} or ${called('contrast')}`,
    fold: t`${called('none')}, ${called('lengthwise')}, ${called('crosswise')}, ${called('partial')} or ${called('double')}; as the fitting keeps it, else shell and lining lengthwise, the others none`,
    projector: t`${called('FILE.svg')}  the lay in full size for a projector, and beside it its test page, ${called('FILE-test-page.svg')}`,
    'test-page': t`${called('FILE.svg')}  the test page for a projector under a name of its own, with the lay or alone`,
    ...LAY_WORDS,
    seconds: t`how long to search, ${SECONDS} when not said`,
  },
  run,
};
