import { called, InputError, t } from '../../garment/index.ts';
import type { Finding, InputProblem, ParamValue, Phrase } from '../../garment/index.ts';
import type { Alteration, Param, Values } from './alteration.ts';
import { alterFinding, ALTER_WORDS, type Amount, type BadParameter } from '../words/words-table.ts';

function bad(alteration: Alteration, param: string, what: BadParameter): InputProblem {
  const values = { ...of(alteration, param), bad: what };
  return {
    code: 'bad-parameter',
    where: { path: `params.${param}`, field: param },
    message: ALTER_WORDS['bad-parameter'](values),
    values,
  };
}

const of = (
  { id, name, params }: Alteration,
  param: string,
): { entry: string; alteration: Phrase; param: string; name: Phrase } => ({
  entry: id,
  alteration: name,
  param,
  name: params.find((p) => p.id === param)?.name ?? t`${called(param)}`,
});

const amountOf = ({ kind }: Param, value: number): Amount =>
  kind === 'length'
    ? { kind, mm: value }
    : kind === 'angle'
      ? { kind, degrees: value }
      : { kind: 'share', number: value };

function checkNumber(
  alteration: Alteration,
  param: Extract<Param, { min: number }>,
  value: ParamValue,
): InputProblem | undefined {
  if (typeof value !== 'number' || !Number.isFinite(value))
    return bad(alteration, param.id, { is: 'no-number', given: JSON.stringify(value) });
  if (value >= param.min && value <= param.max) return undefined;
  const [least, most, given] = [param.min, param.max, value].map((v) => amountOf(param, v));
  return bad(alteration, param.id, { is: 'out-of-bounds', least: least!, most: most!, given: given! });
}

function check(alteration: Alteration, param: Param, value: ParamValue): InputProblem | undefined {
  if ('min' in param) return checkNumber(alteration, param, value);
  const given = JSON.stringify(value);
  if (typeof value !== 'string') return bad(alteration, param.id, { is: 'no-word', given });
  if (param.kind !== 'choice' || param.choices.some((c) => c.id === value)) return undefined;
  return bad(alteration, param.id, { is: 'unknown-choice', known: param.choices.map((c) => c.id), given });
}

/**
 * An alteration's parameters, checked against its schema, defaults filled in. Throws InputError with every problem found:
 * an unknown name, a wrong kind, a value out of bounds.
 */
export function readParams(alteration: Alteration, params: Readonly<Record<string, ParamValue>>): Values {
  const problems: InputProblem[] = [];
  for (const id of Object.keys(params)) {
    if (alteration.params.some((p) => p.id === id)) continue;
    const known = alteration.params.map((p) => p.id);
    problems.push(bad(alteration, id, { is: 'unknown', known, given: JSON.stringify(id) }));
  }
  const values = new Map<string, ParamValue>();
  for (const param of alteration.params) {
    const given = params[param.id];
    if (given === undefined) {
      if (!('blank' in param)) values.set(param.id, param.default);
      continue;
    }
    const problem = check(alteration, param, given);
    if (problem) problems.push(problem);
    else values.set(param.id, given);
  }
  if (problems[0]) throw new InputError(problems[0], problems.slice(1));
  return {
    mm: (id) => {
      const v = values.get(id);
      return typeof v === 'number' ? v : 0;
    },
    maybe: (id) => {
      const v = values.get(id);
      return typeof v === 'number' ? v : undefined;
    },
    word: (id) => {
      const v = values.get(id);
      return typeof v === 'string' ? v : '';
    },
  };
}

/** One warning for every amount beyond its published limit. */
export function limitFindings(alteration: Alteration, values: Values): Finding[] {
  return alteration.params.flatMap((param) => {
    if (!('limit' in param) || !param.limit) return [];
    const amount = values.mm(param.id);
    if (Math.abs(amount) <= param.limit.most + 1e-9) return [];
    return [
      alterFinding(
        'beyond-limit',
        'warning',
        {},
        {
          ...of(alteration, param.id),
          amount: amountOf(param, amount),
          most: amountOf(param, param.limit.most),
          say: param.limit.say,
        },
        { amount },
      ),
    ];
  });
}
