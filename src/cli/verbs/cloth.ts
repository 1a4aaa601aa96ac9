import { clothChoice, laySaid, laySettings, usualIn } from '../../desk/index.ts';
import {
  type Cloth,
  CLOTHS,
  type Fitting,
  FOLDS,
  type Garment,
  called,
  countOf,
  keyWord,
  listOf,
  type Phrase,
  renderPhrase,
  t,
  type Tell,
  tellLength,
} from '../../garment/index.ts';
import {
  bundles,
  type ClothChoice,
  type ClothNeed,
  clothNeeds,
  type CuttingLine,
  cuttingPieces,
  notions,
} from '../../layout/index.ts';
import { LAY_OPTIONS, LAY_WORDS, readLay, typed, type LaySaid } from '../lay-options.ts';
import { loadPieces } from '../load.ts';
import { lengthWord, pairOptions, shareOption, textOption, textOptions } from '../option.ts';
import { UsageError, type Options, type Verb } from '../verb.ts';
import { table } from '../words.ts';

/** Search per cloth, width and fold when nothing is said, seconds. */
const SECONDS = 3;

/** What is typed of a price, and what it is of. */
function price(options: Options): { readonly amount: number; readonly per: 'metre' | 'yard' } | undefined {
  const word = textOption(options, 'price');
  if (word === undefined) return undefined;
  const m = /^(\d+(?:[.,]\d+)?)\/(m|metre|yd|yard)$/i.exec(word);
  if (m === null) throw new UsageError('price-form', { given: word });
  return {
    amount: Number(m[1]!.replace(',', '.')),
    per: m[2]!.toLowerCase().startsWith('m') ? 'metre' : 'yard',
  };
}

/** Widths for one cloth: those said for it, else those said for all, else the one that is kept, else those that cloth is commonly sold in. */
function widthsFor(options: Options, fitting: Fitting, cloth: Cloth): readonly number[] {
  const kept = fitting.lay?.[cloth]?.width;
  const words = textOptions(options, 'width');
  const own = pairOptions({ width: words.filter((w) => w.includes('=')) }, 'width');
  const stray = own.find(([name]) => !CLOTHS.some((c) => c === name));
  if (stray !== undefined) throw new UsageError('cloth-unknown', { given: stray[0], known: CLOTHS });
  const mine = own.filter(([name]) => name === cloth).map(([, w]) => lengthWord(w, '--width'));
  const all = words.filter((w) => !w.includes('=')).map((w) => lengthWord(w, '--width'));
  return mine.length > 0
    ? mine
    : all.length > 0
      ? all
      : kept === undefined
        ? usualIn(fitting.body.show).widths
        : [kept];
}

function choicesFor(
  options: Options,
  fitting: Fitting,
  garment: Garment,
  cloths: readonly Cloth[],
  said: LaySaid,
): readonly ClothChoice[] {
  const folds = textOptions(options, 'fold');
  const wrong = folds.find((f) => !FOLDS.some((x) => x === f));
  if (wrong !== undefined)
    throw new UsageError('option-choice', { option: 'fold', known: FOLDS, given: wrong });
  const cost = price(options);
  return cloths.map((cloth): ClothChoice => {
    // Stripes that are typed are the shell's; what is typed of shrinking goes for all.
    const { repeatAlong: _along, repeatAcross: _across, ...plain } = said.settings;
    const { settings } = laySaid(laySettings(fitting, cloth), {
      ...(cloth === 'shell' ? said.settings : plain),
      ...typed({ shrinkLength: shareOption(options, 'shrink') }),
      ...(cost === undefined ? {} : { price: cost.amount, pricePer: cost.per }),
    });
    const kept = fitting.lay?.[cloth]?.fold;
    return {
      ...clothChoice(garment, cloth, settings),
      widths: widthsFor(options, fitting, cloth),
      folds:
        folds.length > 0 ? FOLDS.filter((f) => folds.includes(f)) : kept ? [kept] : ['lengthwise', 'none'],
    };
  });
}

function plain({ purchase: p, lay, repeatCost }: ClothNeed) {
  return {
    cloth: p.cloth,
    width: p.width,
    fold: lay.fold,
    density: lay.density,
    needed: p.needed,
    beforeWashing: p.before,
    yards: p.yards.text,
    metres: p.metres.text,
    remnant: p.remnant,
    ...(p.cost === undefined ? {} : { cost: p.cost }),
    ...(repeatCost === undefined ? {} : { repeatCost }),
  };
}

const HEAD = [t`cloth`, t`width`, t`fold`];
const SOLD_BY = { in: [t`yards`, t`metres`], cm: [t`metres`, t`yards`] } as const;
const REST = [t`used`, t`left over`];

/** What to clip and to mark on a piece once it is cut, a line each. */
const marking = ({ notches, centres, marks }: CuttingLine): Phrase[] =>
  (
    [
      [t`notches`, notches.map((n) => t`${called(n.edge)}: ${n.count}`)],
      [t`clip`, centres],
      [t`mark`, marks],
    ] as const
  ).flatMap(([word, what]) => (what.length > 0 ? [t`      ${word}: ${listOf(what, ';')}`] : []));

export const cloth: Verb = {
  name: 'cloth',
  usage: ['cloth FITTING.json [--width 1400mm …] [--width lining=1500mm]'],
  about: t`what to buy of each cloth at each width, notions, and the cutting list`,
  options: {
    width: { type: 'string', multiple: true },
    fold: { type: 'string', multiple: true },
    shrink: { type: 'string' },
    price: { type: 'string' },
    elastic: { type: 'string', multiple: true },
    ...LAY_OPTIONS,
  },
  explain: {
    width: t`a width, or ${called('CLOTH=WIDTH')} (again for each); as the fitting keeps it, else those that cloth is commonly sold in`,
    fold: t`a way to fold (again for each); as the fitting keeps it, else the shorter of lengthwise and none`,
    shrink: t`share lost lengthwise in washing, from a test square, e.g. ${called('5%')}`,
    price: t`${called('12.50/m')} or ${called('9/yd')}`,
    elastic: t`${called('NAME=LENGTH')}  an elastic, and how far it is round the body where it will sit (again for each)`,
    ...LAY_WORDS,
    seconds: t`how long to search for each cloth, width and fold, ${SECONDS} when not said`,
  },
  run: async ({ words, options, io, pipeline }) => {
    const [file] = words;
    if (file === undefined || words.length > 1)
      throw new UsageError('one-file', { verb: 'cloth', takes: 'fitting' });
    const said = readLay(options, io, SECONDS);
    const fitting = await loadPieces(io, file);
    const { garment } = pipeline.make(fitting);
    const cloths = CLOTHS.filter((c) => garment.pieces.some((p) => p.cloth === c));
    const { needs, findings } = clothNeeds(
      cuttingPieces(garment),
      choicesFor(options, fitting, garment, cloths, said),
      said.search,
    );
    const buy = needs.map(plain);
    const elastic = pairOptions(options, 'elastic').map(
      ([name, length]) => [name, lengthWord(length, '--elastic')] as const,
    );
    const small = notions(garment, Object.fromEntries(elastic));
    const parts = bundles(garment.pieces);
    const priced = buy.some((n) => n.cost !== undefined);
    const { show, wearer } = fitting.body;
    const rows = (tell: Tell): string[][] =>
      buy.map((n) => [
        renderPhrase(t`${keyWord('cloth', n.cloth)}`, tell),
        tellLength(n.width, tell),
        renderPhrase(t`${keyWord('fold', n.fold)}`, tell),
        ...(show === 'in' ? [n.yards, n.metres] : [n.metres, n.yards]),
        `${(n.density * 100).toFixed(0)} %`,
        tellLength(n.remnant, tell),
        ...(priced ? [n.cost?.toFixed(2) ?? ''] : []),
      ]);
    const head = [...HEAD, ...SOLD_BY[show], ...REST, ...(priced ? [t`cost`] : [])];
    const text = (tell: Tell): string =>
      [
        table(
          head.map((word) => renderPhrase(word, tell)),
          rows(tell),
        ),
        '',
        ...small.map((n) => renderPhrase(n.say, tell)),
        ...parts.flatMap((b) => [
          '',
          ...[
            t`${keyWord('cloth', b.cloth)}: ${countOf(b.parts, t`part`, t`parts`)}`,
            ...b.lines.flatMap((l) => [t`  ${l.number} ${called(l.name)}: ${l.cut}`, ...marking(l)]),
          ].map((words) => renderPhrase(words, tell)),
        ]),
      ].join('\n');
    return {
      json: { buy, notions: small, cutting: parts, findings },
      text,
      show,
      wearer,
      findings,
    };
  },
};
