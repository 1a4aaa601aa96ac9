import { DEFAULT_CHOICES, DEFAULT_PAPER, MM_PER } from '../garment/index.ts';
import type { Body, Fabric, Fitting, Observation, PlanChoices, Step } from '../garment/index.ts';
import { CAST } from './cast-table.ts';
import { sample } from './catalogue.ts';

/** The wardrobe room that the demo is set in; the theatre, the show and everybody in it are invented. */
export const WARDROBE = {
  theatre: 'Gasworks Lane Players',
  show: 'Seven Kettles for the Moon',
  about:
    'A small amateur theatre. Four volunteers sew for a cast of five women and one child, on two machines and one long table, and first nights do not move.',
} as const;

/** A fixed date: the core has no clock, and the demo must come out the same every day. */
const ON = '2026-03-02';

const COTTON: Fabric = {
  name: 'Cotton sateen, washed',
  kind: 'woven',
  shrinkLength: 0.02,
  shrinkWidth: 0.01,
};
const TWILL: Fabric = { name: 'Cotton twill', kind: 'woven', shrinkLength: 0.03, shrinkWidth: 0.01 };
const JERSEY: Fabric = { name: 'Cotton jersey', kind: 'knit', stretch: 0.35, useful: 0.5 };
const POPLIN: Fabric = { name: 'Poplin', kind: 'woven' };

interface Part {
  readonly of: string;
  readonly wears: string;
  readonly fabric: Fabric;
  readonly title: string;
  readonly choices?: Partial<PlanChoices>;
  readonly observations?: readonly Observation[];
  /** Alterations in the order a fitter makes them; truing comes last and is added. */
  readonly steps?: readonly Step[];
  readonly notes: string;
}

const PARTS: readonly Part[] = [
  {
    of: 'wilma',
    wears: 'stage-bodice',
    fabric: COTTON,
    title: 'Lamplighter’s bodice',
    observations: [
      {
        id: 'waist-low',
        line: 'waist',
        where: 'all',
        direction: 'low',
        centre: MM_PER.in,
        side: MM_PER.in,
        note: 'Paper trial: the waist line lies 1 in below the tape all round.',
      },
    ],
    steps: [
      {
        id: 'short-waist',
        kind: 'alter',
        entry: 'length-above-waist',
        params: { back: -MM_PER.in, front: -MM_PER.in, side: -MM_PER.in },
        answers: ['waist-low'],
        note: 'Her waist is 1 in higher than the pattern’s, all round.',
      },
    ],
    notes: 'Opens behind with hooks under a placket; she changes in the wings in forty seconds.',
  },
  {
    of: 'pia',
    wears: 'stage-bodice',
    fabric: COTTON,
    title: 'Widow’s bodice',
    notes: 'Choose by the upper bust, then make room for the bust.',
  },
  {
    of: 'rosa',
    wears: 'knit-tee',
    fabric: JERSEY,
    title: 'Ferryman’s shirt',
    notes: 'Both arms go up in every scene.',
  },
  {
    of: 'greta',
    wears: 'a-line-skirt',
    fabric: TWILL,
    title: 'Mayor’s skirt',
    choices: { front: { waist: 0.56, hip: 0.48 } },
    notes: 'Waist 20 in front of 36 all round: more than half of what is needed goes to the front.',
  },
  {
    of: 'ines',
    wears: 'work-trousers',
    fabric: TWILL,
    title: 'Moon’s trousers',
    steps: [
      {
        id: 'long-rise',
        kind: 'alter',
        entry: 'crotch-depth',
        params: { amount: 15 },
        note: 'Longer from waist to seat than the pattern.',
      },
    ],
    notes: 'Long from waist to seat.',
  },
  {
    of: 'kit',
    wears: 'chorus-smock',
    fabric: POPLIN,
    title: 'Chorus smock',
    notes: 'No cords, ties or loose trimmings; buttons sewn on twice. Not nightwear.',
  },
];

const castMember = (id: string): Body => CAST.find((b) => b.id === id)!;

function fittingOf(part: Part): Fitting {
  return {
    format: 'pintrue-fitting',
    version: 2,
    id: `${part.of}-${part.wears}`,
    title: part.title,
    on: ON,
    body: castMember(part.of),
    pattern: sample(part.wears),
    fabric: part.fabric,
    choices: { ...DEFAULT_CHOICES, ...part.choices },
    steps: [...(part.steps ?? []), { id: 'true', kind: 'true' }],
    observations: part.observations ?? [],
    paper: DEFAULT_PAPER,
    notes: part.notes,
  };
}

let fittings: readonly Fitting[] | undefined;

/** One fitting for each of the cast, in the order of CAST; every sample appears. Made once and kept. */
export function demoFittings(): readonly Fitting[] {
  fittings ??= PARTS.map(fittingOf);
  return fittings;
}

/** The worked example: the short-waisted Wilma Tarn and the stage bodice. */
export const demoFitting = (): Fitting => demoFittings()[0]!;
