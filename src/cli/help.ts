import { called, renderPhrase, t, type Phrase, type Tell } from '../garment/index.ts';
import { VERBS } from './verbs.ts';
import type { Verb } from './verb.ts';

const FORM = t`${called('pintrue VERB … [--json]')}      one body and one multi-size sewing pattern, brought together`;
const MORE = [
  t`  ${called('pintrue help VERB')} shows its options. Every verb takes ${called('--json')} and ${called('--units in|cm|both')} (when not said, as the body`,
  t`  shows its lengths); results go to standard output, messages to standard error.`,
  t`  Exit 0: fine. 1: there is a finding of severity error. 2: something typed or read could not be used.`,
];

/** Every verb in one screen. */
export function helpAll(tell: Tell): string {
  const say = (phrase: Phrase): string => renderPhrase(phrase, tell);
  const width = Math.max(...VERBS.map((v) => v.name.length));
  return [
    say(FORM),
    '',
    ...VERBS.map((v) => `  ${v.name.padEnd(width)}  ${say(v.about)}`),
    '',
    ...MORE.map(say),
  ].join('\n');
}

/** One verb: its forms and its options. */
export function helpVerb(verb: Verb, tell: Tell): string {
  const options = Object.entries(verb.explain);
  const width = Math.max(0, ...options.map(([name]) => name.length));
  return [
    ...verb.usage.map((u) => `pintrue ${u}`),
    '',
    `  ${renderPhrase(verb.about, tell)}`,
    ...(options.length === 0
      ? []
      : ['', ...options.map(([name, what]) => `  --${name.padEnd(width)}  ${renderPhrase(what, tell)}`)]),
  ].join('\n');
}
