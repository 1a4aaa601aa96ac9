import { InputError, say } from '../../garment/index.ts';
import type { Finding, InputProblem, ParamValue } from '../../garment/index.ts';
import type { Alteration, Param, Values } from './alteration.ts';

const bad = (alteration: Alteration, param: string, message: string): InputProblem => ({
  code: 'bad-parameter',
  where: { path: `params.${param}`, field: param },
  message: `${alteration.name}: ${message}`,
});

const unit = (param: Param, value: number): string =>
  param.kind === 'angle' ? `${value} degrees` : param.kind === 'length' ? say(value) : String(value);

function checkNumber(
  alteration: Alteration,
  param: Extract<Param, { min: number }>,
  value: ParamValue,
): InputProblem | undefined {
  if (typeof value !== 'number' || !Number.isFinite(value)) {
    return bad(alteration, param.id, `${param.name} must be a number, not ${JSON.stringify(value)}.`);
  }
  if (value < param.min || value > param.max) {
    return bad(
      alteration,
      param.id,
      `${param.name} must lie between ${unit(param, param.min)} and ${unit(param, param.max)}, not ${unit(param, value)}.`,
    );
  }
  return undefined;
}

function check(alteration: Alteration, param: Param, value: ParamValue): InputProblem | undefined {
  if ('min' in param) return checkNumber(alteration, param, value);
  if (typeof value !== 'string') {
    return bad(alteration, param.id, `${param.name} must be a word, not ${JSON.stringify(value)}.`);
  }
  if (param.kind === 'choice' && !param.choices.some((c) => c.id === value)) {
    const known = param.choices.map((c) => c.id).join(', ');
    return bad(alteration, param.id, `${param.name} must be one of ${known}, not ${JSON.stringify(value)}.`);
  }
  return undefined;
}

/**
 * An alteration's parameters, checked against its schema, defaults filled in. Throws InputError with every problem found:
 * an unknown name, a wrong kind, a value out of bounds.
 */
export function readParams(alteration: Alteration, params: Readonly<Record<string, ParamValue>>): Values {
  const problems: InputProblem[] = [];
  for (const id of Object.keys(params)) {
    if (alteration.params.some((p) => p.id === id)) continue;
    const known = alteration.params.map((p) => p.id).join(', ');
    problems.push(bad(alteration, id, `there is no parameter ${JSON.stringify(id)}; it takes ${known}.`));
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
      {
        code: 'beyond-limit',
        severity: 'warning' as const,
        where: {},
        amount,
        message: `${alteration.name}: ${param.name} of ${unit(param, amount)} is more than the usual most of ${unit(param, param.limit.most)}. ${param.limit.say}`,
      },
    ];
  });
}
