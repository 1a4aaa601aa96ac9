import type { Reading } from '../../garment/index.ts';

/** The readings of one day, and what they come to. */
export interface Day {
  /** ISO date; empty where no day was kept. */
  readonly on: string;
  readonly mean: number;
  readonly count: number;
}

/** Readings of one measure by the day they were taken, oldest day first: what is compared when somebody is measured again. */
export function byDay(readings: readonly Reading[]): readonly Day[] {
  const days = new Map<string, number[]>();
  for (const r of readings) {
    const on = r.on ?? '';
    days.set(on, [...(days.get(on) ?? []), r.value]);
  }
  return [...days]
    .map(([on, values]) => ({
      on,
      mean: values.reduce((sum, v) => sum + v, 0) / values.length,
      count: values.length,
    }))
    .sort((a, b) => a.on.localeCompare(b.on));
}

/** A kept day as people write it here. */
export const dayText = (on: string): string =>
  new Date(`${on}T12:00`).toLocaleDateString(undefined, { day: 'numeric', month: 'short', year: 'numeric' });
