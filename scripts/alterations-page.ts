import { mkdirSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { format, resolveConfig } from 'prettier';
import {
  CATALOGUE,
  GROUPS,
  PROMISES,
  SCHEMATIC,
  changeWords,
  quantityWords,
  readParams,
} from '../src/alter/index.ts';
import type { Alteration, Limit, Param } from '../src/alter/index.ts';
import {
  capital,
  keyWord,
  listOf,
  renderPhrase,
  t,
  TELL_BOTH,
  tellLength,
  type Phrase,
} from '../src/garment/index.ts';
import { toTrue } from '../src/pipeline/index.ts';
import { alterationPicture } from './alteration-picture.ts';

/** Where the page lies. */
export const PAGE = fileURLToPath(new URL('../docs/alterations.md', import.meta.url));
/** Where its drawings lie, one a catalogue entry, named by its id. */
export const PICTURES = fileURLToPath(new URL('../docs/pictures/alterations/', import.meta.url));

const HEAD = `# Alterations

Every alteration of the catalogue: when it is used, what you state, how far it may go and who says so, and what goes along with it.
Made from the catalogue by \`npx tsx scripts/alterations-page.ts\`; a test checks that it is up to date.

The drawings are made by the alteration itself, done with exaggerated amounts on a plain garment of straight lines: before in dots, after in a whole line.

Amounts are typed in inches or centimetres (\`1 1/4in\`, \`32mm\`, \`3.2cm\`); a minus sign turns the direction round. Beyond a limit the alteration is
made all the same, with a warning that says why. What an alteration promises is measured on your own pieces whenever it is made; what is off by more than 0.2 mm
(0.2° of a dart) is told, with what was wanted and what was reached. After your alterations, true the seams once; what truing had to mend
after an alteration on the garment of its drawing stands with each, so that you know where to look.

How sure a source is: seen (read in the source), memory (trade knowledge not looked up again), derived (worked out from geometry),
common practice (trade habit without one source). The numbers refer to [trade.md](trade.md).
`;

/** The page speaks to nobody in particular: lengths in both units. */
const say = (words: Phrase): string => renderPhrase(words, TELL_BOTH);

const amount = (param: Param, value: number): string =>
  param.kind === 'length'
    ? tellLength(value, TELL_BOTH)
    : param.kind === 'angle'
      ? `${value}°`
      : String(value);

const limit = (param: Param, { most, say: why, source }: Limit): string =>
  ` Usual most ${amount(param, most)} (${source.replace(/ \((.*)\)$/, ': $1')}): ${say(why)}`;

function paramLine(param: Param): string {
  const head = `- \`${param.id}\`, ${say(param.name)}`;
  switch (param.kind) {
    case 'length':
    case 'angle': {
      const given =
        param.blank === undefined
          ? `${amount(param, param.default)} if nothing is said`
          : `left empty: ${say(param.blank)}`;
      return `${head}: ${given}, from ${amount(param, param.min)} to ${amount(param, param.max)}.${param.limit ? limit(param, param.limit) : ''}`;
    }
    case 'share':
      return `${head}: a share from ${param.min} to ${param.max}, ${param.default} if nothing is said.`;
    case 'choice':
      return `${head}: ${param.choices.map((c) => `\`${c.id}\` (${say(c.name)})`).join(', ')}.`;
    case 'edge':
      return `${head}: by its name in the pattern; it must be given.`;
    default:
      return `${head}: by its name in the pattern; the first that fits if nothing is said.`;
  }
}

const sayToTrue = (a: Alteration): string => {
  const words = toTrue(a);
  return words.length === 0
    ? 'To true after it: nothing on the garment of the drawing; walk the seams all the same.'
    : say(t`To true after it: ${listOf(words, ';')}.`);
};

/** What the entry promises with the amounts of its drawing. */
function sayPromises(a: Alteration): string {
  const promised = PROMISES[a.id]!(readParams(a, a.shows.params), SCHEMATIC[a.shows.on]);
  const stays = promised.filter((p) => p.by === 0).map((p) => say(quantityWords(p.of)));
  const changes = promised
    .filter((p) => p.by !== 0)
    .map((p) => say(t`${quantityWords(p.of)}: ${changeWords(p.of, p.by)}`));
  const said = [
    ...(changes.length > 0 ? [`Promises, with the amounts of the drawing: ${changes.join('; ')}.`] : []),
    ...(stays.length > 0 ? [`Stays: ${stays.join('; ')}.`] : []),
  ];
  return said.join(' ');
}

const entry = (a: Alteration): string =>
  [
    `### ${say(a.name)}`,
    `\`${a.id}\`. ${say(a.when)}`,
    `![${say(a.name)}, before and after](pictures/alterations/${a.id}.svg)`,
    a.params.map(paramLine).join('\n'),
    say(t`Goes along: ${listOf(a.reach, ';')}.`),
    sayPromises(a),
    sayToTrue(a),
    `Source: ${a.source}.`,
  ].join('\n\n');

/** The whole page, as it should stand in docs. */
export async function alterationsPage(): Promise<string> {
  const chapters = GROUPS.map((group) => {
    const entries = CATALOGUE.filter((a) => a.group === group);
    return `## ${say(t`${capital(t`${keyWord('group', group)}`)}`)}\n\n${entries.map(entry).join('\n\n')}`;
  });
  const text = `${HEAD}\n${chapters.join('\n\n')}\n`;
  return format(text, { ...(await resolveConfig(PAGE)), parser: 'markdown' });
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  writeFileSync(PAGE, await alterationsPage());
  mkdirSync(PICTURES, { recursive: true });
  for (const old of readdirSync(PICTURES)) rmSync(`${PICTURES}${old}`);
  for (const a of CATALOGUE) writeFileSync(`${PICTURES}${a.id}.svg`, alterationPicture(a));
}
