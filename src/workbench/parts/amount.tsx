/** Lengths as a sewist writes them: whole, a true fraction, the unit set small. */

import { lengthStyle, MM_PER, writeLeast } from '../../garment/index.ts';

export interface AmountParts {
  readonly sign: '' | '+' | '−';
  readonly whole: string;
  readonly fraction: string;
  readonly unit: 'in' | 'cm' | 'mm';
}

/** Takes a length in mm apart for show. Inches to the nearest 1/8 (or 1/16), centimetres to a millimetre. */
function amountParts(
  mm: number,
  show: 'in' | 'cm',
  options: { signed?: boolean; in?: 8 | 16 } = {},
): AmountParts {
  const rounded = show === 'in' ? roundedEighths(mm, options.in ?? 8) : { value: Math.abs(Math.round(mm)) };
  const zero = rounded.value === 0;
  const sign = zero ? '' : mm < 0 ? '−' : options.signed ? '+' : '';
  if (show === 'cm') {
    const text = (rounded.value / 10).toFixed(1);
    return { sign, whole: text.replace(/\.0$/, ''), fraction: '', unit: 'cm' };
  }
  const steps = options.in ?? 8;
  const whole = Math.floor(rounded.value / steps);
  let top = rounded.value % steps;
  let bottom: number = steps;
  while (top > 0 && top % 2 === 0) {
    top /= 2;
    bottom /= 2;
  }
  return {
    sign,
    whole: whole > 0 || top === 0 ? String(whole) : '',
    fraction: top > 0 ? `${top}/${bottom}` : '',
    unit: 'in',
  };
}

function roundedEighths(mm: number, steps: number): { value: number } {
  return { value: Math.round((Math.abs(mm) / MM_PER.in) * steps) };
}

/** The same as plain text, for labels and sentences: `40 1/2 in`. */
export function amountText(
  mm: number,
  show: 'in' | 'cm',
  options: { signed?: boolean; in?: 8 | 16 } = {},
): string {
  const p = amountParts(mm, show, options);
  return `${p.sign}${[p.whole, p.fraction].filter(Boolean).join(' ')} ${p.unit}`;
}

/** @param props.about as written it is not exact: `≈` before it, so that nobody takes a rounding for a sum; `<` where it would be nothing as written */
export function Amount(props: {
  mm: number;
  show: 'in' | 'cm';
  signed?: boolean;
  in?: 8 | 16;
  about?: boolean | undefined;
}) {
  const p = amountParts(props.mm, props.show, {
    ...(props.signed ? { signed: true } : {}),
    in: props.in ?? 8,
  });
  if (props.about && p.whole === '0' && !p.fraction)
    return <span className="amount">{`< ${writeLeast(lengthStyle(props.show, props.in ?? 8))}`}</span>;
  return (
    <span className="amount">
      {props.about && '≈ '}
      {p.sign}
      {p.whole}
      {p.whole && p.fraction ? ' ' : ''}
      {p.fraction && <span className={p.whole ? 'part joined' : 'part'}>{p.fraction}</span>}{' '}
      <span className="unit">{p.unit}</span>
    </span>
  );
}
