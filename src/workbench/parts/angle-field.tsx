import { useEffect, useId, useState } from 'react';

export interface AngleFieldProps {
  readonly label: string;
  readonly bare?: boolean;
  readonly narrow?: boolean;
  readonly degrees: number | undefined;
  readonly placeholder?: string;
  readonly onAngle: (degrees: number, typed: string) => void;
  readonly onClear?: () => void;
  readonly onFocus?: () => void;
}

/** An angle in degrees; at Enter, at leaving, or by arrow keys in half degrees. */
export function AngleField(props: AngleFieldProps) {
  const id = useId();
  const shown = props.degrees === undefined ? '' : String(Math.round(props.degrees * 10) / 10);
  const [text, setText] = useState(shown);
  useEffect(() => setText(shown), [shown]);
  const value = Number(text.replace(',', '.').replace('°', ''));
  const wrong = text.trim() !== '' && !(Number.isFinite(value) && Math.abs(value) <= 90);
  const commit = (): void => {
    if (text === shown) return;
    if (text.trim() === '') props.onClear?.();
    else if (!wrong) props.onAngle(value, text.trim());
  };
  return (
    <div className={`field${props.narrow ? ' narrow' : ''}`}>
      <label htmlFor={id} className={props.bare ? 'unseen' : undefined}>
        {props.label} (degrees)
      </label>
      <span className="withunit">
        <input
          id={id}
          type="text"
          inputMode="decimal"
          autoComplete="off"
          value={text}
          placeholder={props.placeholder}
          aria-invalid={wrong || undefined}
          onFocus={props.onFocus}
          onChange={(e) => setText(e.target.value)}
          onBlur={commit}
          onKeyDown={(e) => {
            if (e.key === 'Enter') commit();
            if (e.key !== 'ArrowUp' && e.key !== 'ArrowDown') return;
            e.preventDefault();
            const next = Math.round(((props.degrees ?? 0) + (e.key === 'ArrowUp' ? 0.5 : -0.5)) * 2) / 2;
            props.onAngle(next, String(next));
          }}
        />
        <span className="unit" aria-hidden="true">
          °
        </span>
      </span>
      <span className="echo" aria-live="polite">
        {wrong ? 'An angle in degrees, please.' : ''}
      </span>
    </div>
  );
}
