import {
  called,
  calledAll,
  EDGE_NAMES,
  figure,
  fineLen,
  len,
  listOf,
  percent,
  plural,
  t,
  word,
  type EdgeRole,
  type Half,
  type Phrase,
} from '../../garment/index.ts';

const edgeWord = (role: EdgeRole) => word('edge', role, EDGE_NAMES[role]);

const quoted = (words: string): Phrase => t`“${called(words)}”`;

/** What tells the sizes of a nest apart. */
const TELLERS = {
  file: t`what the file says`,
  layer: t`layer`,
  colour: t`colour`,
  dash: t`dash`,
  'colour-dash': t`colour and dash`,
  width: t`line width`,
  'colour-dash-width': t`colour, dash and width`,
  'layer-colour-dash': t`layer, colour and dash`,
} as const;
export type Teller = keyof typeof TELLERS;
export const tellerWords = (by: Teller): Phrase => TELLERS[by];

/** What a file may leave unsaid. */
const UNSAID = {
  included: t`whether its lines are cutting lines or stitching lines`,
  cloth: t`whether it is for a woven cloth or a knit`,
  wearer: t`whom it is for`,
  bustDifference: t`which bust difference or cup it is drafted for`,
} as const;

/** Where the pages of a tiled drawing got their order from. */
const ORDERS = {
  rows: t`row by row`,
  columns: t`column by column`,
  lines: t`by the lines that go on`,
  labels: t`by their labels`,
  given: t`as you said`,
} as const;

/** Several reasons for one thing. */
export const reasons = (all: readonly (Phrase | null | undefined)[]): Phrase => {
  const said = all.filter((one): one is Phrase => one !== null && one !== undefined);
  return said.length === 1 ? said[0]! : t`${listOf(said, ';')}`;
};

/** Why something found was taken so: the reader's own sentences, lengths in mm. */
export const EVIDENCE_WORDS = {
  'units-of-pdf': () => t`the PDF: ${72} points to the inch`,
  'units-of-svg': ({ unit }: { unit: string | null }) =>
    unit === null
      ? t`the SVG: screen units, taken as ${96} to the inch`
      : t`the SVG: its width is given in ${called(unit)}`,
  'units-of-dxf': ({ from }: { from: 'file' | 'header' | 'assumed' }) =>
    from === 'file'
      ? t`the UNITS line of the file`
      : from === 'header'
        ? t`the unit code in the header of the file`
        : t`assumed: the file does not say`,
  'units-traced': () => t`traced from a photograph or scan`,
  'units-of-pattern': () => t`the pattern: millimetres`,
  'whole-in-file': () => t`The file carries its whole pattern.`,
  'as-written': () => t`as written in the file`,
  'as-told': () => t`as told`,
  'marked-in-file': () => t`marked so in the file`,
  'words-beside': () => t`words beside it`,

  'told-by': ({ by, layer }: { by: Teller; layer: string | null }) =>
    layer === null
      ? t`told by ${TELLERS[by]}: each size is drawn in its own`
      : t`told by ${TELLERS[by]}: its lines are on ${quoted(layer)}`,
  'told-by-order': () => t`told by their order: all sizes are drawn in one kind of line, the smallest inmost`,
  'drawn-once': () => t`every piece is drawn once`,
  'name-from-shape': () => t`its name read from its shape`,

  'nest-of': ({ outlines, lines, dashes, shared, lacking }: NestSaid) =>
    t`${outlines > 1 ? t`${outlines} outlines lie on one another` : t`one outline for all sizes`}${
      lines > 1 || dashes
        ? t`, joined from up to ${lines} ${dashes ? plural(lines, t`dash`, t`dashes`) : plural(lines, t`line`, t`lines`)}`
        : null
    }${shared ? t`, closed along a line that sizes share` : null}${
      lacking > 0 ? t`, ${lacking} ${plural(lacking, t`size`, t`sizes`)} lacking` : null
    }`,
  'named-by-words': ({ name, cut }: { name: string; cut: string | null }) =>
    t`named by the words on it: ${quoted(name)}${cut === null ? null : t`, ${quoted(cut)}`}`,
  'number-from-shape': ({ number }: { number: string }) =>
    t`its number ${called(number)} read from its shape`,
  'no-words-on': () => t`no words on it`,
  'between-corners': () => t`a run between two corners`,
  'no-edge-fits': () => t`no other edge fits it`,
  'dart-legs': ({ legs, mouth }: { legs: readonly [number, number]; mouth: number }) =>
    t`two legs of ${len(legs[0])} and ${len(legs[1])} meeting inside, ${len(mouth)} apart at the edge`,
  'tick-in': ({ same, sizes }: { same: number; sizes: number }) =>
    same === sizes ? t`a tick in every size` : t`a tick in ${same} of ${sizes} sizes`,
  'arrow-heads': () => t`a line with arrow heads`,
  'no-grainline': () => t`no grainline found; taken upright as drawn`,
  'double-line': () => t`a double line`,
  'line-inside': () => t`a line inside the piece`,
  'cross-at': ({ at }: { at: 'words' | 'dart' | 'bust-line' | 'nothing' }) =>
    at === 'words'
      ? t`words beside a cross`
      : at === 'dart'
        ? t`a cross at a dart’s point`
        : at === 'bust-line'
          ? t`a cross at the bust line of a front`
          : t`a cross`,
  underlap: ({ long }: { long: number }) => t`an underlap: ${len(long)} in every size`,
  'opening-of': ({ piece }: { piece: string }) => t`the opening that ${called(piece)} finishes`,
  'rest-of': ({ piece }: { piece: string }) => t`what ${called(piece)} leaves of an edge`,
  'repeats-piece': ({ edges, parent }: { edges: readonly string[]; parent: string }) =>
    t`${edges.length} ${plural(edges.length, t`edge`, t`edges`)} (${calledAll(edges)}) ${plural(edges.length, t`repeats`, t`repeat`)} ${called(parent)} in every size`,

  'same-length': ({ long, sizes }: { long: number; sizes: boolean }) =>
    sizes
      ? t`the same length in every size (${len(long)} at most)`
      : t`the same length (${len(long)} at most)`,
  'eased-in': ({ by, each }: { by: number; each: 'every' | 'average' | 'one' }) =>
    t`${len(Math.abs(by))} ${by > 0 ? t`longer` : t`shorter`}${each === 'every' ? t` in every size` : each === 'average' ? t` on the average` : null}: eased in`,
  'gathered-in': ({ times }: { times: number }) => t`${figure(times, 2, 2)} times as long: gathered`,
  'lengths-unfit': () => t`lengths do not fit`,
  'no-notches': () => t`no notches to compare`,
  'one-side-notched': () => t`only one side has notches`,
  'notches-meet': ({ pairs, of }: { pairs: number; of: number }) =>
    t`${pairs} of ${of} ${plural(of, t`notch`, t`notches`)} ${plural(pairs, t`meets`, t`meet`)}`,
  'stands-over': ({ by }: { by: number }) => t`${len(by)} stand over in every size, an underlap`,
  'centre-of-pair': () => t`the centre edge of a mirrored pair: sewn to its twin, or an opening`,
  'repeats-sewn': () => t`it repeats what is sewn there`,
  'repeats-edge': () => t`it repeats this edge`,
  'folded-only': () => t`the two sides of one piece, which would only be folded`,
  'band-underlap': () => t`the ends of a band with an underlap: they lie on one another`,
  'band-open': ({ sewn }: { sewn: boolean }) =>
    sewn
      ? t`the ends of a band, and what it is sewn to is open there as well`
      : t`the ends of a band that is sewn to nothing else`,

  'edge-form': ({ form, between }: { form: EdgeForm; between: readonly EdgeRole[] }) =>
    t`${FORMS[form]}${between.length === 2 ? t` between ${edgeWord(between[0]!)} and ${edgeWord(between[1]!)}` : null}`,
  'notch-teeth': ({ teeth }: { teeth: number }) =>
    teeth === 3 ? t`a notch of three teeth` : teeth === 2 ? t`a notch of two teeth` : t`notches of one tooth`,
  'balance-notch': ({ teeth, half, met }: { teeth: number; half: Half; met: boolean }) =>
    t`${teeth === 3 ? t`three teeth` : teeth === 2 ? t`two teeth` : t`one tooth`} on the ${half === 'front' ? t`front` : t`back`} of an armhole${met ? t`, and a notch that meets it on the edge it is sewn to` : null}`,
  'crown-notch': ({ met }: { met: boolean }) =>
    t`at the top of the cap${met ? t`, where the shoulder seam meets it` : null}`,
  'words-along': ({ words }: { words: string }) => t`${quoted(words)} is written along it`,
  'sewn-to': ({ pieces, fit }: { pieces: readonly string[]; fit: Phrase }) =>
    t`sewn to ${calledAll(pieces, 'and')}: ${fit}`,
  'sewn-to-nothing': () => t`nothing is found to be sewn to it`,
  'called-so': ({ words }: { words: readonly string[] }) => t`called ${listOf(words.map(quoted))}`,
  'outline-goes-with': ({ edges }: { edges: readonly EdgeRole[] }) =>
    t`its outline goes with ${listOf(edges.map((role) => t`${edgeWord(role)}`))}`,
  'drawn-turned': ({ how }: { how: 'upside-down' | 'lying' | 'over' }) =>
    how === 'over' ? t`drawn turned over` : how === 'lying' ? t`drawn lying` : t`drawn upside down`,
  'repeats-parent': ({ parent, beside }: { parent: string; beside: boolean }) =>
    beside ? t`runs beside that edge of ${called(parent)}` : t`repeats that edge of ${called(parent)}`,
  'facing-free': ({ parent }: { parent: string }) =>
    t`the edge of a facing that repeats nothing of ${called(parent)}`,
  'follows-parent': ({ parent, named }: { parent: string; named: boolean }) =>
    named ? t`called so; it follows ${called(parent)}` : t`follows ${called(parent)}, whose role it has`,

  'file-silent': ({ about }: { about: keyof typeof UNSAID }) => t`The file does not say ${UNSAID[about]}.`,
  'file-says': ({ words, but }: { words: string; but: 'width' | 'stretch' | null }) =>
    t`${quoted(words)}${
      but === null
        ? null
        : but === 'width'
          ? t`; how wide it is, it does not say`
          : t`; how far it stretches, it does not say`
    }`,
  'two-lines': () => t`Each piece is drawn in two kinds of line, one at an even distance inside the other.`,
  'stitching-layer': () => t`The file draws its stitching lines on a layer of their own.`,
  'cutting-layer': () =>
    t`The file’s outlines are on the layer for cutting lines; how wide its allowance is, it does not say.`,

  'is-of-jacket': ({ piece }: { piece: string }) => t`${quoted(piece)} is that of a jacket.`,
  'is-long': ({ piece, over }: { piece: string; over: number }) =>
    t`${quoted(piece)} is more than ${len(over)} long.`,
  'is-side-panel': ({ piece }: { piece: string }) => t`${quoted(piece)} is a side panel.`,
  'has-edge': ({ piece, role }: { piece: string; role: EdgeRole }) =>
    /^[aeiou]/.test(EDGE_NAMES[role])
      ? t`${quoted(piece)} has an ${edgeWord(role)}.`
      : t`${quoted(piece)} has a ${edgeWord(role)}.`,
  'kind-unsaid': () => t`Nothing that was found says so or otherwise.`,

  'scaled-bare': ({ factor }: { factor: number }) => t`Scaled by ${figure(factor)} as you said.`,
  'scaled-line': ({ factor, long, said }: { factor: number; long: number; said: number }) =>
    t`Scaled by ${figure(factor, 5, 5)}: the line of ${fineLen(long)} is ${fineLen(said)} as you said.`,
  'scaled-square': ({ factor, wide, high, said }: Square & { factor: number }) =>
    t`Scaled by ${figure(factor, 5, 5)}: the square of ${fineLen(wide)} × ${fineLen(high)} is ${fineLen(said)} as you said.`,
  'square-measures': ({ said, wide, high }: Square) =>
    t`The printed square of ${fineLen(said)} measures ${fineLen(wide)} × ${fineLen(high)}.`,
  'line-measures': ({ said, long }: { said: number; long: number }) =>
    t`The printed line of ${fineLen(said)} measures ${fineLen(long)}.`,
  'lengths-unproven': () => t`Nothing proves the lengths.`,
  'lengths-as': ({ from }: { from: Phrase }) => t`Lengths are as ${from} has them.`,

  'pages-lie': ({ pages, columns, rows, by, overlap, goOn }: PagesSaid) =>
    t`${pages} pages, ${columns} across and ${rows} down, ${ORDERS[by]}${
      overlap === null
        ? t`, edge to edge`
        : t`, overlapping ${len(overlap.x)} sideways and ${len(overlap.y)} up and down`
    }: ${percent(goOn)} of the lines over page borders go on on the next page.`,
  'pages-separate': ({ pages }: { pages: number }) =>
    pages > 1 ? t`${pages} separate sheets: no line goes from one to another.` : t`One sheet.`,
};

interface NestSaid {
  readonly outlines: number;
  readonly lines: number;
  /** What it is joined from are dashes. */
  readonly dashes: boolean;
  readonly shared: boolean;
  readonly lacking: number;
}
interface Square {
  readonly said: number;
  readonly wide: number;
  readonly high: number;
}
interface PagesSaid {
  readonly pages: number;
  readonly columns: number;
  readonly rows: number;
  readonly by: keyof typeof ORDERS;
  /** Null: edge to edge. */
  readonly overlap: { readonly x: number; readonly y: number } | null;
  readonly goOn: number;
}

/** How an edge looks that was taken for what it is. */
const FORMS = {
  fold: t`cut on the fold`,
  cap: t`hollow, round, hollow`,
  straight: t`a straight edge`,
  round: t`a round curve`,
  'slightly-round': t`a slightly round edge`,
  hollow: t`a hollow curve`,
  'slightly-hollow': t`a slightly hollow edge`,
} as const;
export type EdgeForm = keyof typeof FORMS;
