import {
  DxfError,
  inDoubt,
  patternFrom,
  proposalSummary,
  REQUIRED_ASKS,
  ReadError,
  REFUSAL_WORDS,
  type Asks,
  type Corrections,
  type Proposal,
} from '../../exchange/index.ts';
import {
  cautionsFor,
  area,
  called,
  calledAll,
  EDGE_NAMES,
  figure,
  GARMENT_KINDS,
  InputError,
  middleOf,
  PIECE_NAMES,
  renderPhrase,
  t,
  word,
  writePattern,
  type Phrase,
  type Tell,
  pieceAt,
} from '../../garment/index.ts';
import { fileName } from '../../desk/index.ts';
import { loadChart } from '../load.ts';
import { readHere } from '../read-apart.ts';
import { NIGHTWEAR_WORDS, nightwearSaid, readWearer } from '../choices.ts';
import { choiceOption, lengthOption, shareOption, textOption } from '../option.ts';
import { UsageError, type Call, type Verb } from '../verb.ts';
import { wroteWords } from '../step-words.ts';
import { cautionLines, table } from '../words.ts';

/** The option that answers each question. */
const ASK_OPTION: Readonly<Record<keyof Asks, string>> = {
  included: '--included',
  cloth: '--cloth-stretch',
  wearer: '--wearer',
  bustDifference: '--bust-difference',
};

async function propose({ options, io }: Call, file: string): Promise<Proposal> {
  const scaleBy = textOption(options, 'scale-by');
  const bytes = await io.readFile(file);
  try {
    return await (io.readApart ?? readHere)({
      bytes,
      name: fileName(file),
      ...(scaleBy === undefined ? {} : { scaleBy }),
    });
  } catch (error) {
    if (error instanceof ReadError)
      throw new InputError({ code: error.code, where: { file }, message: error.phrase });
    if (error instanceof DxfError)
      throw new InputError({
        code: 'dxf',
        where: { file, ...(error.line > 0 ? { row: error.line } : {}) },
        // The place stands before it already.
        message: REFUSAL_WORDS['dxf-line']({ line: 0, what: error.what }),
      });
    throw error;
  }
}

/** What the person says about the proposal. */
async function corrections({ options, io }: Call): Promise<Corrections> {
  const [name, chart] = [textOption(options, 'name'), textOption(options, 'chart')];
  const [included, allowance] = [lengthOption(options, 'included', true), lengthOption(options, 'allowance')];
  if (included !== undefined && included < 0) throw new UsageError('included-negative');
  const garment = choiceOption(options, 'garment', GARMENT_KINDS);
  const wearer = choiceOption(options, 'wearer', ['woman', 'man', 'child']);
  const stretch = shareOption(options, 'cloth-stretch');
  const bustDifference = lengthOption(options, 'bust-difference', true);
  if (bustDifference !== undefined && bustDifference < 0) throw new UsageError('bust-difference-negative');
  return {
    ...(name === undefined ? {} : { name }),
    ...(chart === undefined
      ? {}
      : {
          chart: await loadChart(io, chart, readWearer(options)),
        }),
    ...(included === undefined ? {} : { included }),
    ...(allowance === undefined ? {} : { allowance }),
    ...(garment === undefined ? {} : { garment }),
    ...(wearer === undefined ? {} : { wearer }),
    ...(stretch === undefined
      ? {}
      : { cloth: stretch === 0 ? { kind: 'woven' } : { kind: 'knit', stretch } }),
    ...(bustDifference === undefined ? {} : { bustDifference }),
  };
}

/** What would be typed for what the file says. */
const TYPED: { readonly [K in keyof Asks]: (offered: NonNullable<Asks[K]['offered']>) => string } = {
  included: (mm) => (mm === 0 ? '0' : `${Math.round(mm * 100) / 100}mm`),
  cloth: (cloth) => (cloth.kind === 'woven' ? '0' : `${Math.round(cloth.stretch * 100)}%`),
  wearer: (who) => who,
  bustDifference: (mm) => `${Math.round(mm * 10) / 10}mm`,
};

/** A sentence as part of a longer one. */
function withoutStop({ phrase }: Phrase): Phrase {
  const last = phrase.at(-1);
  return typeof last === 'string'
    ? { phrase: [...phrase.slice(0, -1), last.replace(/\.$/, '')] }
    : { phrase };
}

/** A pattern is kept once all is said that no line shows, as on the page; a file that carries its whole pattern has said it. */
function checkAnswered({ name, asks, whole }: Proposal, said: Corrections): void {
  if (whole) return;
  const one = <K extends keyof Asks>(ask: K): Phrase => {
    const { offered, evidence } = asks[ask];
    const option = ASK_OPTION[ask];
    const typed = (is: Asks[K]['offered'] & {}): string => `${option} ${TYPED[ask](is)}`;
    return offered === null
      ? t`${called(option)}: ${evidence}`
      : t`${called(option)}: it says ${withoutStop(evidence)}; if that is right, ${called(typed(offered))}.`;
  };
  const missing = REQUIRED_ASKS.filter((ask) => said[ask] === undefined).map(one);
  if (missing.length > 0) throw new UsageError('answers-missing', { file: name, missing });
}

/** A table brings its own sizes: as many, in the same order. */
function checkSizes(proposal: Proposal, said: Corrections): void {
  const [drawn, told] = [proposal.sizes.length, said.chart?.sizes.length ?? proposal.sizes.length];
  if (drawn !== told)
    throw new UsageError('chart-sizes', { told, drawn, sizes: proposal.sizes.map((s) => s.label) });
}

/** A side of a seam for reading: each piece once with its edges; walked twice, both halves of what is cut on the fold. */
function side(proposal: Proposal, refs: Proposal['seams'][number]['a']): Phrase {
  const pieces = [...new Set(refs.map((ref) => ref.piece))];
  const words = pieces.map((id) => {
    const piece = pieceAt(proposal, id);
    const own = [...new Set(refs.filter((ref) => ref.piece === id).map((ref) => ref.edge))];
    const edges = own.map((edge) => piece?.edges.find((one) => one.id === edge)?.name ?? edge);
    return `${piece?.name ?? id}.${edges.join(', ')}`;
  });
  const halves = new Set(refs.map((ref) => `${ref.piece} ${ref.edge}`)).size < refs.length;
  return t`${called(words.join(' + '))}${halves ? t` (both halves)` : null}`;
}

const UNKNOWN = t`not known`;
const WORN = { left: t`, worn on the left`, right: t`, worn on the right` };
const DOUBT = t`Edges in doubt: say what they are with ${called('pintrue roles')}, or bring the file in on the page`;
const HEAD = [t`piece`, t`what it is`, t`sizes`, t`area`, t`edges`, t`notches`, t`grain`];

/** The edges of which it is not sure what they are, one line each, and a heading; nothing where all are sure. */
function doubts({ pieces }: Proposal): Phrase[] {
  const edges = pieces.flatMap((piece) =>
    piece.edges
      .filter((edge) => edge.kind !== 'dart' && inDoubt(edge))
      .map((edge) => {
        const is =
          edge.role === undefined
            ? UNKNOWN
            : t`perhaps the ${word('edge', edge.role, EDGE_NAMES[edge.role])}`;
        const why = edge.because ? t` (${edge.because})` : null;
        return t`  ${called(piece.name)}, ${called(edge.name)}: ${is}${why}`;
      }),
  );
  return edges.length === 0 ? [] : [DOUBT, ...edges, t``];
}

function told(proposal: Proposal, tell: Tell): string {
  const say = (phrase: Phrase): string => renderPhrase(phrase, tell);
  const found = proposalSummary(proposal);
  const middle = middleOf(proposal.sizes.length);
  const pieces = found.pieces.map((p) => [
    p.name,
    say(
      p.role === undefined
        ? UNKNOWN
        : t`${inDoubt(p) ? t`perhaps ` : null}${word('piece', p.role, PIECE_NAMES[p.role])}${p.side ? WORN[p.side] : null}`,
    ),
    String(p.sizes.length),
    say(t`${area(p.sizes[middle]?.area ?? 0)}`),
    String(p.sizes[middle]?.edges.length ?? 0),
    String(p.notches),
    say(p.grain),
  ]);
  const seams = proposal.seams
    .filter((s) => s.rank === 1)
    .toSorted((a, b) => b.score - a.score)
    .map(
      (s) => t`  ${figure(s.score, 2, 2)}  ${side(proposal, s.a)}  to  ${side(proposal, s.b)}: ${s.evidence}`,
    );
  return [
    say(t`Units: ${found.unitsFrom}. ${found.scale}`),
    say(found.assembly),
    say(t`Sizes: ${calledAll(proposal.sizes.map((s) => s.label))}`),
    '',
    table(HEAD.map(say), pieces),
    '',
    ...doubts(proposal).map(say),
    say(t`Seams proposed, with their scores`),
    ...seams.map(say),
    '',
    say(
      t`What the file says of itself; say what is not right with the options of read (${called('pintrue help read')})`,
    ),
    ...found.asks.map(({ ask, evidence }) => say(t`  ${called(ASK_OPTION[ask])}: ${evidence}`)),
  ].join('\n');
}

export const read: Verb = {
  name: 'read',
  usage: ['read FILE [--scale-by "100 mm square"] [--out PATTERN.json]'],
  about: t`bring in a pattern from PDF, SVG or DXF: what is proposed, and why`,
  options: {
    out: { type: 'string' },
    'scale-by': { type: 'string' },
    name: { type: 'string' },
    chart: { type: 'string' },
    included: { type: 'string' },
    allowance: { type: 'string' },
    garment: { type: 'string' },
    wearer: { type: 'string' },
    nightwear: { type: 'string' },
    waist: { type: 'string' },
    'table-unit': { type: 'string' },
    'cloth-stretch': { type: 'string' },
    'bust-difference': { type: 'string' },
  },
  explain: {
    out: t`the pattern document to write (asks for ${called('--included')}, ${called('--cloth-stretch')} and ${called('--wearer')}); without it the proposal is only shown`,
    'scale-by': t`a length of known size that is drawn: ${called('"100 mm square"')}, ${called('"4 in square"')}, ${called('"10 cm line"')}`,
    name: t`what to call the pattern`,
    chart: t`the maker’s size chart, sizes in the order drawn`,
    included: t`the drawn outlines are cut lines with this much seam allowance inside them; 0: they are stitching lines`,
    allowance: t`allowance to give to seams that have none said`,
    garment: t`${calledAll(GARMENT_KINDS)}`,
    wearer: t`${called('woman')}, ${called('man')} or ${called('child')}`,
    nightwear: NIGHTWEAR_WORDS,
    waist: t`${called('natural')} or ${called('iso')}: which waist the chart means`,
    'table-unit': t`${called('in')} or ${called('cm')}: of the rows of the chart that do not say their own`,
    'cloth-stretch': t`the pattern is for a knit that stretches this far; 0: for a woven`,
    'bust-difference': t`how much fuller the full bust is than the upper bust it is drafted for`,
  },
  run: async (call) => {
    const [file] = call.words;
    if (file === undefined || call.words.length > 1)
      throw new UsageError('one-file', { verb: 'read', takes: 'drawing' });
    const said = await corrections(call);
    const proposal = await propose(call, file);
    checkSizes(proposal, said);
    const out = textOption(call.options, 'out');
    if (out !== undefined) checkAnswered(proposal, said);
    const { pattern: drawn, findings } = patternFrom(proposal, said);
    const pattern = nightwearSaid(call.options, drawn);
    if (out !== undefined) await call.io.writeFile(out, writePattern(pattern));
    const all = [...proposal.findings, ...findings];
    return {
      json: {
        ...proposalSummary(proposal),
        cautions: cautionsFor({ pattern }).map((c) => c.code),
        findings: all,
        ...(out === undefined ? {} : { wrote: out }),
      },
      text: (tell) =>
        [
          told(proposal, tell),
          ...cautionLines({ pattern }, tell),
          ...(out === undefined ? [] : [renderPhrase(wroteWords(out), tell)]),
        ].join('\n'),
      findings: all,
    };
  },
};
