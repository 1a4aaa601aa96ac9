import { Stopped } from '../words/fault.ts';
import { useCallback, useEffect, useMemo, useRef, useState } from 'react';
import type { Cloth, Finding, Garment, LaySettings } from '../../garment/index.ts';
import { Caller } from '../call/index.ts';
import type { LayDoings, LayFile, LayPicture } from './lay-worker.ts';

/** Time given to one search before it rests; it can be sent on. s. */
const BUDGET_SECONDS = 15;
/** How often the share of it that is used is shown anew, ms. */
const SHOW_MS = 250;

/** A worker that lays cloth. */
export const startLayer = (): Worker =>
  new Worker(new URL('./lay-worker.ts', import.meta.url), { type: 'module', name: 'lay' });

export interface LayState {
  readonly picture: LayPicture | null;
  readonly running: boolean;
  readonly share: number;
  readonly trouble: Error | null;
  readonly findings: readonly Finding[];
  readonly stop: () => void;
  readonly goOn: () => void;
  readonly file: (kind: LayFile, show: 'in' | 'cm') => Promise<string>;
}

/**
 * Lays one cloth in a worker of its own: the first picture at once, better ones as they come; stopping keeps the best, and it can be sent on.
 * Where what is asked cannot be laid (two pins on one another), the last lay stays in view beside the reason.
 */
export function useLay(garment: Garment, cloth: Cloth, settings: LaySettings): LayState {
  const layer = useMemo(() => new Caller<LayDoings>(startLayer), []);
  const [picture, setPicture] = useState<LayPicture | null>(null);
  const [running, setRunning] = useState(false);
  const [share, setShare] = useState(0);
  const [trouble, setTrouble] = useState<Error | null>(null);
  const [proof, setProof] = useState<readonly Finding[]>([]);
  const turn = useRef(0);
  /** The first lay is there: from then on there is a best one to keep. */
  const begun = useRef(false);

  const failed = useCallback((mine: number, error: Error): void => {
    if (mine !== turn.current || error instanceof Stopped) return;
    setRunning(false);
    setTrouble(error);
  }, []);

  const search = useCallback(
    async (mine: number): Promise<void> => {
      setRunning(true);
      const began = performance.now();
      const shown = setInterval(() => {
        if (mine === turn.current)
          setShare(Math.min(1, (performance.now() - began) / (BUDGET_SECONDS * 1000)));
      }, SHOW_MS);
      try {
        await layer.call('search', { seconds: BUDGET_SECONDS }, (better) => {
          if (mine === turn.current) setPicture(better);
        });
      } finally {
        clearInterval(shown);
      }
      if (mine !== turn.current) return;
      setRunning(false);
      const proven = await layer.call('prove');
      if (mine === turn.current) setProof(proven);
    },
    [layer],
  );

  const begin = useCallback((): void => {
    const mine = ++turn.current;
    begun.current = false;
    setTrouble(null);
    setProof([]);
    setRunning(true);
    setShare(0);
    layer
      .call('begin', { garment, cloth, settings })
      .then((first) => {
        if (mine !== turn.current) return undefined;
        begun.current = true;
        if (first) setPicture(first);
        return search(mine);
      })
      .catch((error: Error) => failed(mine, error));
  }, [garment, cloth, settings, layer, search, failed]);
  useEffect(begin, [begin]);
  useEffect(
    () => () => {
      turn.current++;
      layer.stop();
    },
    [layer],
  );

  return {
    picture,
    running,
    share,
    trouble,
    findings: proof,
    stop: () => {
      setRunning(false);
      if (begun.current) {
        // The search comes to rest with what it has, and is proven as at its end.
        const mine = turn.current;
        layer.call('stop').catch((error: Error) => failed(mine, error));
        return;
      }
      turn.current++;
      layer.stop();
    },
    goOn: () => {
      if (!begun.current) {
        begin();
        return;
      }
      const mine = ++turn.current;
      search(mine).catch((error: Error) => failed(mine, error));
    },
    file: (kind, show) => layer.call('file', { kind, show }),
  };
}
