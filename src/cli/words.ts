import {
  called,
  cautionLine,
  cautionsFor,
  keyWord,
  renderPhrase,
  t,
  type Finding,
  type Phrase,
  type Question,
  type Tell,
} from '../garment/index.ts';
import { say } from './said.ts';

/** Rows as an aligned table; numbers (and what begins like one) to the right. */
export function table(head: readonly string[], rows: readonly (readonly string[])[]): string {
  const all = [head, ...rows];
  const widths = head.map((_, i) => Math.max(...all.map((row) => (row[i] ?? '').length)));
  const right = head.map(
    (_, i) => rows.length > 0 && rows.every((row) => /^(?:≈ )?[-+]?[\d.]|^$|^-$/.test(row[i] ?? '')),
  );
  return all
    .map((row) =>
      row
        .map((cell, i) => (right[i] === true ? cell.padStart(widths[i]!) : cell.padEnd(widths[i]!)))
        .join('  ')
        .trimEnd(),
    )
    .join('\n');
}

/** Sentences, each on a line of its own. */
export const lines =
  (...said: readonly Phrase[]) =>
  (tell: Tell): string =>
    said.map((line) => renderPhrase(line, tell)).join('\n');

const RANK = { error: 0, warning: 1, note: 2 } as const;

const MEANT = t`meant so`;

/** One line: `warning [sizes-far-apart] …`; what was answered, with the reason: `meant so [sizes-far-apart] …`. */
function tellFinding(f: Finding, tell: Tell): string {
  const sort = f.answered ? MEANT : t`${keyWord('severity', f.severity)}`;
  const why = f.answered ? ` ${renderPhrase(t`The reason: ${called(f.answered.reason)}`, tell)}` : '';
  return `${renderPhrase(sort, tell)} [${f.code}] ${say(f, tell)}${why}`;
}

/** Findings, worst first, what was answered last. Empty text without any. */
export function tellFindings(findings: readonly Finding[], tell: Tell): string {
  const rank = (f: Finding): number => (f.answered ? 3 : RANK[f.severity]);
  return findings
    .toSorted((a, b) => rank(a) - rank(b))
    .map((f) => tellFinding(f, tell))
    .join('\n');
}

/** Girths read once, told in one note. */
function readOnce(questions: readonly Question[]): readonly Finding[] {
  const once = questions.filter((q) => q.code === 'second-reading');
  if (once.length === 0) return [];
  const measures = once.map((q) => q.measure);
  return [
    { code: 'second-reading', severity: 'note', where: { measure: measures[0]! }, values: { measures } },
  ];
}

/** Questions about entries as findings, so that they stand among the rest: second readings in one note, anything else a warning. */
export function questionFindings(questions: readonly Question[]): readonly Finding[] {
  const asked = questions.filter(
    (q, i) =>
      q.code !== 'second-reading' &&
      questions.findIndex((p) => p.measure === q.measure && p.code === q.code) === i,
  );
  return [
    ...asked.map((q) => ({
      code: q.code,
      severity: 'warning' as const,
      where: { measure: q.measure },
      values: q.values,
    })),
    ...readOnce(questions),
  ];
}

/** The cautions of what is made, a line each. */
export const cautionLines = (made: Parameters<typeof cautionsFor>[0], tell: Tell): readonly string[] =>
  cautionsFor(made).map((c) => renderPhrase(cautionLine(c), tell));
