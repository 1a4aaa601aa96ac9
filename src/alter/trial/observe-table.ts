import type { Observable } from './sight.ts';
import { LOWER_SIGHTS } from './sights-lower.ts';
import { SLEEVE_SIGHTS } from './sights-sleeve.ts';
import { UPPER_SIGHTS } from './sights-upper.ts';

/** The lines that can be stated, and what can be said of each. test/trial-rows.test.ts holds every row to a drawn body. */
export const OBSERVABLES: readonly Observable[] = [...SLEEVE_SIGHTS, ...UPPER_SIGHTS, ...LOWER_SIGHTS];

/** The kind of line an observation speaks of: by its id, its name or what else it is called, whole. */
export function observableOf(line: string): Observable | undefined {
  const asked = line.trim().toLowerCase();
  return OBSERVABLES.find((o) => o.id === asked || o.name === asked || o.also.includes(asked));
}
