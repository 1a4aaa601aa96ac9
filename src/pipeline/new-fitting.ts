import { DEFAULT_CHOICES, DEFAULT_PAPER } from '../garment/index.ts';
import type { Body, Fabric, Fitting, Pattern, PlanChoices, Step } from '../garment/index.ts';

export interface NewFitting {
  readonly body: Body;
  readonly pattern: Pattern;
  /** ISO date of the day, from the face: the core has no clock. */
  readonly on: string;
  readonly id?: string;
  readonly title?: string;
  readonly fabric?: Fabric;
  readonly choices?: Partial<PlanChoices>;
  /** Paper by its name, e.g. `a4`. */
  readonly paper?: string;
  readonly notes?: string;
}

/** The first step of every fitting: sizes run into one another, and their seams are trued at once, where anyone can see it and take it back. */
const TRUE_FIRST: Step = { id: 'true-1', kind: 'true' };

/** A fresh fitting document for one body and one pattern: cloth as the pattern asks, default choices, one truing step. */
export function newFitting(given: NewFitting): Fitting {
  const { body, pattern } = given;
  return {
    format: 'pintrue-fitting',
    version: 2,
    id: given.id ?? `${body.id}-${pattern.id}`,
    title: given.title ?? `${pattern.name} for ${body.name}`,
    on: given.on,
    body,
    pattern,
    fabric: given.fabric ?? clothFor(pattern),
    choices: { ...DEFAULT_CHOICES, ...given.choices },
    steps: [TRUE_FIRST],
    observations: [],
    paper: { ...DEFAULT_PAPER, ...(given.paper === undefined ? {} : { paper: given.paper }) },
    notes: given.notes ?? '',
  };
}

function clothFor(pattern: Pattern): Fabric {
  if (pattern.cloth.kind === 'woven') return { name: 'woven cloth', kind: 'woven' };
  return { name: 'knit as the pattern asks', kind: 'knit', stretch: pattern.cloth.stretch };
}
