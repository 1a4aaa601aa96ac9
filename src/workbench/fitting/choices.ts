import type { Fitting, Level, PlanChoices } from '../../garment/index.ts';

/** Acts on what a person wants, each giving a new fitting. */
type Act = (f: Fitting) => Fitting;

export const choose =
  (part: Partial<PlanChoices>): Act =>
  (f) => ({ ...f, choices: { ...f.choices, ...part } });

function without<T>(record: Readonly<Record<string, T>>, key: string): Record<string, T> {
  const { [key]: _gone, ...rest } = record;
  return rest;
}

/** Wanted ease at a level, mm all round; `null` gives it back to the pattern or the category. */
export const setEase =
  (level: Level, mm: number | null): Act =>
  (f) =>
    choose({ ease: mm === null ? without(f.choices.ease, level) : { ...f.choices.ease, [level]: mm } })(f);

/** Size at a level (or `base`); `null` gives it back to the plan. */
export const setSize =
  (level: Level | 'base', size: string | null): Act =>
  (f) =>
    choose({ size: size === null ? without(f.choices.size, level) : { ...f.choices.size, [level]: size } })(
      f,
    );

/** Share of a level's residual that goes to the front; `null` gives it back to the body's arcs. */
export const setFront =
  (level: Level, share: number | null): Act =>
  (f) =>
    choose({
      front: share === null ? without(f.choices.front, level) : { ...f.choices.front, [level]: share },
    })(f);

/** Whether a seam may take part when width is spread. */
export const holdStill =
  (seam: string, still: boolean): Act =>
  (f) =>
    choose({
      still: still
        ? [...f.choices.still.filter((s) => s !== seam), seam]
        : f.choices.still.filter((s) => s !== seam),
    })(f);

/** The fit category; `null` for the pattern's own ease. */
export const setCategory =
  (category: PlanChoices['category'] | null): Act =>
  (f) => {
    const { category: _old, ...rest } = f.choices;
    return { ...f, choices: category ? { ...rest, category } : rest };
  };

/** What is taken between two sizes; `null` for the usual of each place. */
export const setBetween =
  (between: PlanChoices['between'] | null): Act =>
  (f) => {
    const { between: _old, ...rest } = f.choices;
    return { ...f, choices: between ? { ...rest, between } : rest };
  };
