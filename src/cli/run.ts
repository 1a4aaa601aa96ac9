import { parseArgs } from 'node:util';
import {
  called,
  InputError,
  nearestWord,
  renderPhrase,
  t,
  tellError,
  tellOf,
  type Body,
  type Tell,
} from '../garment/index.ts';
import { createPipeline } from '../pipeline/index.ts';
import { helpAll, helpVerb } from './help.ts';
import type { Io } from './io.ts';
import { choiceOption, textOption } from './option.ts';
import { saidJson } from './said.ts';
import { UsageError, type Answer, type Call, type Options, type Verb } from './verb.ts';
import { VERBS } from './verbs.ts';
import { tellFindings } from './words.ts';

/** Fine; a finding of severity error; input that could not be used; a fault of ours. */
export const EXIT = { fine: 0, error: 1, input: 2, fault: 70 } as const;

/** What the parser of options says, in our own words: it tells the option in its message only. */
function misparsed(error: unknown): unknown {
  const { code, message } = error as NodeJS.ErrnoException;
  const option = /'(?:-\w, )?(--?[^' ]*)/.exec(message)?.[1];
  if (option === undefined) return error;
  if (code === 'ERR_PARSE_ARGS_UNKNOWN_OPTION') return new UsageError('option-unknown', { option });
  if (code !== 'ERR_PARSE_ARGS_INVALID_OPTION_VALUE') return error;
  if (message.includes('does not take')) return new UsageError('option-flag', { option });
  return new UsageError(message.includes('ambiguous') ? 'option-dash' : 'option-bare', { option });
}

function parse(verb: Verb, argv: readonly string[]): { words: readonly string[]; options: Options } {
  try {
    const { values, positionals } = parseArgs({
      args: [...argv],
      options: {
        ...verb.options,
        json: { type: 'boolean' },
        units: { type: 'string' },
        help: { type: 'boolean', short: 'h' },
      },
      allowPositionals: true,
      strict: true,
    });
    return { words: positionals, options: values as Options };
  } catch (error) {
    throw misparsed(error);
  }
}

const UNITS = ['in', 'cm', 'both'] as const;

/** How this face says things: in the unit that was typed, else as the person reads, else in both; with the words of whoever wears it. */
function tellFor(
  asked: string | undefined,
  { show, wearer = 'woman' }: Pick<Answer, 'show' | 'wearer'>,
  { letters }: Io,
): Tell {
  const tell = tellOf({ show: UNITS.find((unit) => unit === asked) ?? show ?? 'both', wearer });
  return letters ? { ...tell, letters } : tell;
}

/** The unit asked for, by words that may not hold together otherwise. */
function unitTyped(argv: readonly string[]): string | undefined {
  const at = argv.lastIndexOf('--units');
  return at === -1
    ? argv.find((word) => word.startsWith('--units='))?.slice('--units='.length)
    : argv[at + 1];
}

function report(answer: Answer, options: Options, io: Io): number {
  const tell = tellFor(textOption(options, 'units'), answer, io);
  if (options['json'] === true) io.out(`${JSON.stringify(saidJson(answer.json, tell), null, 2)}\n`);
  else io.out(`${answer.text(tell)}\n`);
  const findings = tellFindings(answer.findings, tell);
  if (findings !== '') io.err(`${findings}\n`);
  return answer.findings.some((f) => f.severity === 'error' && !f.answered) ? EXIT.error : EXIT.fine;
}

function help(name: string | undefined, io: Io, tell: Tell): number {
  const verb = VERBS.find((v) => v.name === name);
  if (name !== undefined && verb === undefined) throw unknownVerb(name);
  io.out(`${verb === undefined ? helpAll(tell) : helpVerb(verb, tell)}\n`);
  return EXIT.fine;
}

function unknownVerb(name: string): UsageError {
  const near = nearestWord(
    name,
    VERBS.map((v) => v.name),
  );
  return new UsageError('verb-unknown', { verb: name.slice(0, 40), near });
}

async function obey(argv: readonly string[], io: Io, tell: Call['tell']): Promise<number> {
  const [name, ...rest] = argv;
  if (name === undefined || name === 'help' || name === '--help' || name === '-h')
    return help(rest[0], io, tell());
  const verb = VERBS.find((v) => v.name === name);
  if (verb === undefined) throw unknownVerb(name);
  const { words, options } = parse(verb, rest);
  if (options['help'] === true) return help(name, io, tell());
  choiceOption(options, 'units', UNITS);
  return report(await verb.run({ words, options, io, tell, pipeline: createPipeline() }), options, io);
}

/**
 * Runs one command. Nothing is written unless everything needed could be read and made.
 * @param argv the words after `pintrue` @returns the exit code (`EXIT`)
 */
export async function runCli(argv: readonly string[], io: Io): Promise<number> {
  let about: Pick<Body, 'show' | 'wearer'> | undefined;
  const tellNow = (): Tell => tellFor(unitTyped(argv), about ?? {}, io);
  try {
    return await obey(argv, { ...io, met: (person) => (about = person) }, tellNow);
  } catch (error) {
    const tell = tellNow();
    if (error instanceof UsageError) {
      const verb = VERBS.find((v) => v.name === argv[0]);
      const forms = (verb?.usage ?? []).map((form) => t`usage: ${called(`pintrue ${form}`)}`);
      io.err([error.phrase, ...forms].map((said) => `${renderPhrase(said, tell)}\n`).join(''));
      return EXIT.input;
    }
    if (error instanceof InputError) {
      io.err(`${tellError(error, tell)}\n`);
      return EXIT.input;
    }
    const trace = error instanceof Error ? (error.stack ?? error.message) : String(error);
    io.err(`${renderPhrase(t`A fault in Pintrue, not in what you gave it: ${called(trace)}`, tell)}\n`);
    return EXIT.fault;
  }
}
