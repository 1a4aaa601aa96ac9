import { DEFAULT_CHOICES, type Body, type Fitting, type Pattern } from '../../garment/index.ts';

/** A fitting in which nothing is decided yet. Id and date come from outside. */
export function beginFitting(body: Body, pattern: Pattern, given: { id: string; on: string }): Fitting {
  return {
    format: 'pintrue-fitting',
    version: 1,
    id: given.id,
    title: `${pattern.name} for ${body.name}`,
    on: given.on,
    body,
    pattern,
    fabric: pattern.cloth.kind === 'knit' ? { name: 'Knit', kind: 'knit', stretch: pattern.cloth.stretch } : { name: 'Woven cloth', kind: 'woven' },
    choices: DEFAULT_CHOICES,
    steps: [],
    observations: [],
    paper: { paper: 'a4', allowances: true, nest: 'faint' },
    notes: '',
  };
}
