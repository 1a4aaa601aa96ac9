import { useEffect, useId, useRef, useState } from 'react';
import { readLength, renderPhrase, tellIn, MM_PER, type LengthUnit } from '../../garment/index.ts';
import { amountText } from './amount.tsx';

const STEP_MM: Record<'in' | 'cm', number> = { in: MM_PER.in / 8, cm: 1 };

export interface LengthFieldProps {
  readonly label: string;
  /** The label is read to a screen reader but not drawn (its row shows it). */
  readonly bare?: boolean;
  readonly mm: number | undefined;
  readonly show: 'in' | 'cm';
  readonly signed?: boolean;
  readonly placeholder?: string;
  readonly describedBy?: string;
  /** A valid amount, with what was typed. Once per decision: at Enter, at leaving, at an arrow key; at every key when `live`. */
  readonly onAmount: (mm: number, typed: string) => void;
  readonly onClear?: () => void;
  readonly onFocus?: () => void;
  /** After Enter has kept what was typed; not while it cannot be read. */
  readonly onEnter?: (field: HTMLInputElement) => void;
  readonly live?: boolean;
  readonly narrow?: boolean;
}

/** A length typed as people write it: `40 1/2`, `102,9 cm`. What it was understood as is said in the other unit below it. */
export function LengthField(props: LengthFieldProps) {
  const { mm, show, label } = props;
  const id = useId();
  const shown = mm === undefined ? '' : amountText(mm, show, { in: 16 }).replace(/ (in|cm)$/, '');
  const [text, setText] = useState(shown);
  const [writing, setWriting] = useState(false);
  const given = useRef(shown);
  useEffect(() => {
    if (!writing) setText(shown);
  }, [shown, writing]);

  const unit: LengthUnit = show;
  const read = text.trim() === '' ? null : readLength(text, unit, { signed: props.signed ?? false });
  const wrong = writing && read && read.kind !== 'length' ? renderPhrase(read.message, tellIn(show)) : null;

  function commit(next = text): void {
    if (next === given.current && next === shown) return;
    given.current = next;
    if (next.trim() === '') {
      if (mm !== undefined) props.onClear?.();
      return;
    }
    const result = readLength(next, unit, { signed: props.signed ?? false });
    if (result.kind === 'length' && next !== shown) props.onAmount(result.mm, next.trim());
  }

  function nudge(by: number): void {
    const now = read?.kind === 'length' ? read.mm : (mm ?? 0);
    const step = STEP_MM[show];
    const next = Math.round(now / step + by) * step;
    if (!props.signed && next <= 0) return;
    const typed = amountText(next, show, { in: 16 }).replace(/ (in|cm)$/, '');
    setText(typed);
    given.current = typed;
    props.onAmount(next, typed);
  }

  const other = read?.kind === 'length' && writing ? amountText(read.mm, show === 'in' ? 'cm' : 'in') : null;
  return (
    <div className={`field${props.narrow ? ' narrow' : ''}`}>
      <label htmlFor={id} className={props.bare ? 'unseen' : undefined}>
        {label}
      </label>
      <span className="withunit">
        <input
          id={id}
          type="text"
          inputMode={show === 'cm' ? 'decimal' : 'text'}
          autoComplete="off"
          enterKeyHint="next"
          spellCheck={false}
          value={text}
          placeholder={props.placeholder}
          aria-invalid={wrong ? true : undefined}
          aria-describedby={[`${id}-echo`, props.describedBy].filter(Boolean).join(' ')}
          onFocus={() => {
            setWriting(true);
            props.onFocus?.();
          }}
          onChange={(event) => {
            setText(event.target.value);
            if (props.live) {
              const now = readLength(event.target.value, unit, { signed: props.signed ?? false });
              if (now.kind === 'length') props.onAmount(now.mm, event.target.value.trim());
            }
          }}
          onBlur={() => {
            commit();
            setWriting(false);
          }}
          onKeyDown={(event) => {
            if (event.key === 'Enter') {
              commit();
              if (!wrong) props.onEnter?.(event.currentTarget);
            }
            if (event.key === 'ArrowUp' || event.key === 'ArrowDown') {
              event.preventDefault();
              nudge(event.key === 'ArrowUp' ? 1 : -1);
            }
          }}
        />
        <span className="unit" aria-hidden="true">
          {show}
        </span>
      </span>
      <span id={`${id}-echo`} className="echo" aria-live="polite">
        {wrong ?? (other ? `= ${other}` : '')}
      </span>
    </div>
  );
}
