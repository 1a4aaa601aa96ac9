import { VERBS } from './verbs.ts';
import type { Verb } from './verb.ts';

/** Every verb in one screen. */
export function helpAll(): string {
  const width = Math.max(...VERBS.map((v) => v.name.length));
  return [
    'pintrue VERB … [--json]      one body and one multi-size sewing pattern, brought together',
    '',
    ...VERBS.map((v) => `  ${v.name.padEnd(width)}  ${v.about}`),
    '',
    '  pintrue help VERB shows its options. Every verb takes --json and --units in|cm|both (when not said, as the body\n  shows its lengths); results go to standard output, messages to standard error.',
    '  Exit 0: fine. 1: there is a finding of severity error. 2: something typed or read could not be used.',
  ].join('\n');
}

/** One verb: its forms and its options. */
export function helpVerb(verb: Verb): string {
  const options = Object.entries(verb.explain);
  const width = Math.max(0, ...options.map(([name]) => name.length));
  return [
    ...verb.usage.map((u) => `pintrue ${u}`),
    '',
    `  ${verb.about}`,
    ...(options.length === 0
      ? []
      : ['', ...options.map(([name, what]) => `  --${name.padEnd(width)}  ${what}`)]),
  ].join('\n');
}
