import { useEffect, useId, useRef, useState } from 'react';
import { meantSo } from '../../desk/index.ts';
import type { Finding } from '../../garment/index.ts';
import type { ReadyBench } from '../station/bench.ts';

interface Props {
  readonly bench: ReadyBench;
  readonly finding: Finding;
  /** The place in words, for the list of what was done. */
  readonly place: string;
}

/** "It is meant so", with the reason: the finding is then no longer open, until it changes. */
export function MeantForm({ bench, finding, place }: Props) {
  const id = useId();
  const [reason, setReason] = useState<string | null>(null);
  const field = useRef<HTMLInputElement>(null);
  const asked = reason !== null;
  useEffect(() => {
    if (asked) field.current?.focus();
  }, [asked]);
  if (reason === null) {
    return (
      <button type="button" className="act" onClick={() => setReason('')}>
        It is meant so<span className="unseen">: {place}</span>
      </button>
    );
  }
  const keep = (): void => {
    const why = reason.trim();
    if (why === '') return;
    const today = new Date().toISOString().slice(0, 10);
    bench.change(meantSo(finding, why, today), `${place ? `${place}: it` : 'It'} is meant so: ${why}`);
  };
  return (
    <form
      className="row"
      onSubmit={(e) => {
        e.preventDefault();
        keep();
      }}
    >
      <label className="field" htmlFor={id}>
        <span className="label">Why it is meant so</span>
        <input
          id={id}
          type="text"
          maxLength={500}
          ref={field}
          value={reason}
          onChange={(e) => setReason(e.target.value)}
        />
      </label>
      <button type="submit" className="act main" disabled={reason.trim() === ''}>
        Keep this answer
      </button>
      <button type="button" className="act" onClick={() => setReason(null)}>
        Do not answer
      </button>
    </form>
  );
}
