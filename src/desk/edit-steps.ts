import type { Fitting, ParamValue, Step } from '../garment/index.ts';
import { stepsAdded } from '../pipeline/index.ts';

/** Acts on the list of steps, each giving a new fitting. */
type Act = (f: Fitting) => Fitting;

const withSteps = (f: Fitting, steps: readonly Step[]): Fitting => ({ ...f, steps });

/** Adds steps where they belong: see `stepsAdded`. */
export const addSteps =
  (...steps: readonly Step[]): Act =>
  (f) =>
    stepsAdded(f, steps);

/** Puts one amount of one alteration; `undefined` leaves it blank. */
export const putParam =
  (id: string, param: string, value: ParamValue | undefined): Act =>
  (f) =>
    withSteps(
      f,
      f.steps.map((s) => {
        if (s.id !== id || s.kind !== 'alter') return s;
        const { [param]: _old, ...rest } = s.params;
        return { ...s, params: value === undefined ? rest : { ...rest, [param]: value } };
      }),
    );

/** Takes a step out of the reckoning, or back in. */
export const switchStep =
  (id: string, off: boolean): Act =>
  (f) =>
    withSteps(
      f,
      f.steps.map((s) => {
        if (s.id !== id) return s;
        const { off: _off, ...rest } = s;
        return off ? { ...rest, off } : rest;
      }),
    );

export const dropStep =
  (id: string): Act =>
  (f) =>
    withSteps(
      f,
      f.steps.filter((s) => s.id !== id),
    );

/** Moves a step one place earlier (−1) or later (+1). */
export const moveStep =
  (id: string, by: -1 | 1): Act =>
  (f) => {
    const i = f.steps.findIndex((s) => s.id === id);
    const j = i + by;
    if (i < 0 || j < 0 || j >= f.steps.length) return f;
    const steps = [...f.steps];
    [steps[i], steps[j]] = [steps[j]!, steps[i]!];
    return withSteps(f, steps);
  };
