import { startTransition, useEffect, useState } from 'react';
import type { Fitting } from '../../garment/index.ts';
import type { Made } from './bench-worker.ts';
import { makeLatest } from './bench.ts';

export interface MadeState {
  readonly made: Made | null;
  /** The fitting that `made` belongs to: while a newer one is in the making, the older result stays in view. */
  readonly of: Fitting | null;
  readonly trouble: Error | null;
}

/** The made garment of a fitting, kept up to date. */
export function useMade(fitting: Fitting | null, step?: string): MadeState {
  const [state, setState] = useState<MadeState>({ made: null, of: null, trouble: null });
  useEffect(() => {
    if (!fitting) return undefined;
    let wanted = true;
    makeLatest(
      fitting,
      step,
      // Drawn when there is time between keys: the next key or pull goes before the picture of the last.
      (made) => wanted && startTransition(() => setState({ made, of: fitting, trouble: null })),
      (error) => wanted && setState((s) => ({ ...s, trouble: error })),
    );
    return () => {
      wanted = false;
    };
  }, [fitting, step]);
  return state;
}
