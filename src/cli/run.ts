import { parseArgs } from 'node:util';
import { InputError, nearestWord, tellError, tellOf, type Tell } from '../garment/index.ts';
import { createPipeline } from '../pipeline/index.ts';
import { helpAll, helpVerb } from './help.ts';
import type { Io } from './io.ts';
import { choiceOption, textOption } from './option.ts';
import { saidJson } from './said.ts';
import { UsageError, type Answer, type Options, type Verb } from './verb.ts';
import { VERBS } from './verbs.ts';
import { tellFindings } from './words.ts';

/** Fine; a finding of severity error; input that could not be used; a fault of ours. */
export const EXIT = { fine: 0, error: 1, input: 2, fault: 70 } as const;

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
    throw new UsageError(error instanceof Error ? error.message.split('. To specify')[0]! : String(error));
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
  else io.out(`${typeof answer.text === 'string' ? answer.text : answer.text(tell)}\n`);
  const findings = tellFindings(answer.findings, tell);
  if (findings !== '') io.err(`${findings}\n`);
  return answer.findings.some((f) => f.severity === 'error') ? EXIT.error : EXIT.fine;
}

function help(name: string | undefined, io: Io): number {
  const verb = VERBS.find((v) => v.name === name);
  if (name !== undefined && verb === undefined) throw new UsageError(unknownVerb(name));
  io.out(`${verb === undefined ? helpAll() : helpVerb(verb)}\n`);
  return EXIT.fine;
}

function unknownVerb(name: string): string {
  const near = nearestWord(
    name,
    VERBS.map((v) => v.name),
  );
  return `"${name.slice(0, 40)}" is not something pintrue can do${near === null ? '' : `; did you mean ${near}`}. Try pintrue help.`;
}

async function obey(argv: readonly string[], io: Io): Promise<number> {
  const [name, ...rest] = argv;
  if (name === undefined || name === 'help' || name === '--help' || name === '-h') return help(rest[0], io);
  const verb = VERBS.find((v) => v.name === name);
  if (verb === undefined) throw new UsageError(unknownVerb(name));
  const { words, options } = parse(verb, rest);
  if (options['help'] === true) return help(name, io);
  choiceOption(options, 'units', UNITS);
  return report(await verb.run({ words, options, io, pipeline: createPipeline() }), options, io);
}

/**
 * Runs one command. Nothing is written unless everything needed could be read and made.
 * @param argv the words after `pintrue` @returns the exit code (`EXIT`)
 */
export async function runCli(argv: readonly string[], io: Io): Promise<number> {
  const tell = tellFor(unitTyped(argv), {}, io);
  try {
    return await obey(argv, io);
  } catch (error) {
    if (error instanceof UsageError) {
      const verb = VERBS.find((v) => v.name === argv[0]);
      io.err(
        `${tellError(error, tell)}\n${(verb?.usage ?? []).map((u) => `usage: pintrue ${u}\n`).join('')}`,
      );
      return EXIT.input;
    }
    if (error instanceof InputError) {
      io.err(`${tellError(error, tell)}\n`);
      return EXIT.input;
    }
    io.err(
      `A fault in Pintrue, not in what you gave it: ${error instanceof Error ? (error.stack ?? error.message) : String(error)}\n`,
    );
    return EXIT.fault;
  }
}
