import { useCallback, useEffect, useMemo, useRef, useState } from 'react';
import type { Cloth, Finding, Garment } from '../../garment/index.ts';
import { Caller } from '../worker/call.ts';
import type { LayDoings, LayPicture } from './lay-worker.ts';
import type { LaySettings } from './lay-settings.ts';

/** Time given to one search before it rests; it can be sent on. ms. */
const BUDGET_MS = 15_000;
const SLICE_MS = 250;

export interface LayState {
  readonly picture: LayPicture | null;
  readonly running: boolean;
  readonly share: number;
  readonly trouble: string | null;
  readonly findings: readonly Finding[];
  readonly misfits: readonly { say: string; mm: number }[];
  readonly stop: () => void;
  readonly goOn: () => void;
}

/** Lays one cloth in a worker of its own: the first picture at once, better ones as they come; stopping keeps the best, and it can be sent on. */
export function useLay(garment: Garment, cloth: Cloth, settings: LaySettings): LayState {
  const layer = useMemo(
    () =>
      new Caller<LayDoings>(
        () => new Worker(new URL('./lay-worker.ts', import.meta.url), { type: 'module', name: 'lay' }),
      ),
    [],
  );
  const [picture, setPicture] = useState<LayPicture | null>(null);
  const [running, setRunning] = useState(false);
  const [share, setShare] = useState(0);
  const [trouble, setTrouble] = useState<string | null>(null);
  const [proof, setProof] = useState<Pick<LayState, 'findings' | 'misfits'>>({ findings: [], misfits: [] });
  const turn = useRef(0);

  const search = useCallback(
    async (mine: number): Promise<void> => {
      setRunning(true);
      const began = performance.now();
      for (;;) {
        const used = (performance.now() - began) / BUDGET_MS;
        if (used >= 1 || mine !== turn.current) break;
        const { better, done } = await layer.call('go', { ms: SLICE_MS, share: used });
        if (mine !== turn.current) return;
        if (better) setPicture(better);
        setShare(used);
        if (done) break;
      }
      setRunning(false);
      setProof(await layer.call('prove', undefined as never));
    },
    [layer],
  );

  useEffect(() => {
    const mine = ++turn.current;
    layer.stop();
    setTrouble(null);
    setProof({ findings: [], misfits: [] });
    layer
      .call('begin', { garment, cloth, settings })
      .then((first) => {
        if (mine !== turn.current) return undefined;
        setPicture(first);
        return search(mine);
      })
      .catch((error: Error) => {
        if (mine !== turn.current || error.message === 'stopped') return;
        setPicture(null);
        setRunning(false);
        setTrouble(error.message);
      });
  }, [garment, cloth, settings, layer, search]);
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
    ...proof,
    stop: () => {
      turn.current++;
      setRunning(false);
      void layer.call('prove', undefined as never).then(setProof);
    },
    goOn: () => void search(++turn.current),
  };
}
