import { useEffect, useMemo, useState } from 'react';
import type { PieceCorrection } from '../../exchange/index.ts';
import type { Caller } from '../call/index.ts';
import type { Found, ReadDoings } from './read-worker.ts';

type Again = Pick<Found, 'pieces' | 'seams' | 'garment'>;

/** Only what was said of roles: nothing else makes the rest be looked for anew. */
function rolesSaid(said: Readonly<Record<string, PieceCorrection>>): Record<string, PieceCorrection> {
  const roles = Object.entries(said).map(([id, { role, half, edges = {} }]): [string, PieceCorrection] => [
    id,
    {
      ...(role ? { role } : {}),
      ...(half ? { half } : {}),
      edges: Object.fromEntries(Object.entries(edges).filter(([, edge]) => edge.role)),
    },
  ]);
  return Object.fromEntries(roles.filter(([, one]) => one.role || Object.keys(one.edges ?? {}).length > 0));
}

/** Pieces and seams as they were found, and found again after every answer with what was said standing fast. */
export function useFoundAgain(
  found: Found,
  reader: Caller<ReadDoings>,
  said: Readonly<Record<string, PieceCorrection>>,
): { now: Again; busy: boolean } {
  const key = useMemo(() => JSON.stringify(rolesSaid(said)), [said]);
  const [again, setAgain] = useState<{ key: string; found: Again } | null>(null);
  const none = key === '{}';
  useEffect(() => {
    if (none) return;
    let wanted = true;
    reader
      .call('again', { pieces: JSON.parse(key) as Record<string, PieceCorrection> })
      .then((now) => wanted && setAgain({ key, found: now }))
      // The last finding stands.
      .catch(() => wanted && setAgain((last) => ({ key, found: last?.found ?? found })));
    return () => {
      wanted = false;
    };
  }, [key, none, reader, found]);
  return none ? { now: found, busy: false } : { now: again?.found ?? found, busy: again?.key !== key };
}
