import { listOf, t, tellIn, tellOf, renderPhrase, type Phrase } from '../../garment/index.ts';
import { useEffect, useRef, useState } from 'react';
import type { Step } from '../../garment/index.ts';
import type { ReadyBench } from '../station/bench.ts';
import { AngleField } from '../parts/angle-field.tsx';
import { amountText } from '../parts/amount.tsx';
import { LengthField } from '../parts/length-field.tsx';
import type { CatalogueEntry } from '../worker/entry-list.ts';
import { AlterDrawing } from './alter-drawing.tsx';
import { putParam } from '../../desk/index.ts';

type Alter = Extract<Step, { kind: 'alter' }>;
type Param = CatalogueEntry['params'][number];
type Amount = Extract<Param, { limit?: unknown }>;
const isAmount = (p: Param): p is Amount => p.kind === 'length' || p.kind === 'angle';

/** The amounts of one alteration: typed, nudged by arrow keys or slid; the pieces follow at every key. */
export function AlterForm({
  bench,
  step,
  entry,
  fresh,
}: {
  bench: ReadyBench;
  step: Alter;
  entry: CatalogueEntry;
  /** It was added this moment: its first amount is what is said next. */
  fresh: boolean;
}) {
  const { change, fitting } = bench;
  const form = useRef<HTMLDivElement>(null);
  useEffect(() => {
    const first = fresh ? form.current?.querySelector<HTMLInputElement>('input[type="text"]') : null;
    first?.focus();
    first?.select();
  }, [fresh]);
  const say = (words: Phrase): string => renderPhrase(words, tellOf(bench.fitting.body));
  return (
    <div className="stack tight alter-form" ref={form}>
      <p className="small">{say(entry.when)}</p>
      <AlterDrawing entry={entry} name={say(entry.name)} />
      {entry.params.map((param) => {
        const key = `step/${step.id}/${param.id}`;
        const value = step.params[param.id];
        const put = (next: string | number | undefined, said: string): void =>
          change(putParam(step.id, param.id, next), `${say(entry.name)}, ${say(param.name)}: ${said}`, key);
        if (param.kind === 'choice') {
          return (
            <label key={param.id} className="field">
              <span className="label">{say(param.name)}</span>
              <select
                value={String(value ?? param.default)}
                onChange={(e) => put(e.target.value, e.target.selectedOptions[0]!.text)}
              >
                {param.choices.map((c) => (
                  <option key={c.id} value={c.id}>
                    {say(c.name)}
                  </option>
                ))}
              </select>
            </label>
          );
        }
        if (param.kind === 'piece' || param.kind === 'edge' || param.kind === 'dart') {
          return (
            <label key={param.id} className="field">
              <span className="label">{say(param.name)}</span>
              <select
                value={String(value ?? param.default)}
                onChange={(e) => put(e.target.value, e.target.selectedOptions[0]!.text)}
              >
                <option value="">{param.kind === 'edge' ? 'choose one' : 'the first that fits'}</option>
                {optionsOf(fitting, param.kind).map((o) => (
                  <option key={o.id} value={o.id}>
                    {o.name}
                  </option>
                ))}
              </select>
            </label>
          );
        }
        if (param.kind === 'share') {
          const number = typeof value === 'number' ? value : param.default;
          return (
            <label key={param.id} className="field">
              <span className="label">
                {say(param.name)}: {Math.round(number * 100)} %
              </span>
              <input
                type="range"
                className="slide"
                min={param.min}
                max={param.max}
                step={0.01}
                value={number}
                onChange={(e) => put(Number(e.target.value), `${Math.round(Number(e.target.value) * 100)} %`)}
              />
            </label>
          );
        }
        if (!isAmount(param)) return null;
        return (
          <AmountParam
            key={param.id}
            param={param}
            value={typeof value === 'number' ? value : undefined}
            show={bench.show}
            put={put}
          />
        );
      })}
      <details className="why">
        <summary>What else changes, and who says so</summary>
        <p>
          {say(t`${listOf(entry.reach, ';')}.`)} <em>By {ruleWords(entry.source)}.</em>
        </p>
      </details>
    </div>
  );
}

/** How sure it is who says so, in a sewist's words; where it stands is in the list of alterations. */
const ruleWords = (source: string): string =>
  /\bseen\b/.test(source)
    ? 'a published fitting rule'
    : /\bderived\b/.test(source)
      ? 'what the geometry gives'
      : 'a common fitting rule';

function optionsOf(
  fitting: ReadyBench['fitting'],
  kind: 'piece' | 'edge' | 'dart',
): { id: string; name: string }[] {
  const { pieces } = fitting.pattern;
  if (kind === 'piece') return pieces.map((p) => ({ id: p.id, name: p.name }));
  if (kind === 'dart')
    return pieces.flatMap((p) => p.darts.map((d) => ({ id: d.id, name: `${p.name}: ${d.name}` })));
  return pieces.flatMap((p) => p.edges.map((e) => ({ id: e.id, name: `${p.name}: ${e.name}` })));
}

/** One length or angle with its published bound. A blank one is left out of the step. */
function AmountParam({
  param,
  value,
  show,
  put,
}: {
  param: Amount;
  value: number | undefined;
  show: 'in' | 'cm';
  put: (next: number | undefined, said: string) => void;
}) {
  const tell = tellIn(show);
  const label = renderPhrase(param.name, tell);
  const blank = param.blank === undefined ? undefined : renderPhrase(param.blank, tell);
  const clear = (): void => {
    setBeyond(null);
    put(blank === undefined ? 0 : undefined, blank ?? 'nothing');
  };
  const limited = param.limit && Math.abs(value ?? 0) > param.limit.most;
  // What was typed beyond what can be drawn: it stays in the field and is not made.
  const [beyond, setBeyond] = useState<number | null>(null);
  const take = (amount: number, said: string): void => {
    const fits = amount >= param.min && amount <= param.max;
    setBeyond(fits ? null : amount);
    if (fits && amount !== value) put(amount, said);
  };
  const amountWords = (amount: number): string =>
    param.kind === 'length' ? amountText(amount, show) : `${amount}°`;
  return (
    <div className="stack tight">
      {param.kind === 'angle' ? (
        <AngleField
          label={label}
          degrees={beyond ?? value}
          placeholder={blank ?? ''}
          onAngle={(d, typed) => take(d, `${typed}°`)}
          onClear={clear}
        />
      ) : (
        <LengthField
          label={label}
          mm={beyond ?? value}
          show={show}
          signed
          live
          placeholder={blank ?? ''}
          onAmount={(mm) => take(mm, amountText(mm, show))}
          onClear={clear}
        />
      )}
      {beyond !== null && (
        <p className="small limit" role="alert">
          {amountWords(beyond)} cannot be drawn: from {amountWords(param.min)} to {amountWords(param.max)} is
          possible. The pieces stay at {value === undefined ? (blank ?? 'nothing') : amountWords(value)}.
        </p>
      )}
      {limited && (
        <p className="small limit">
          Beyond {amountWords(param.limit!.most)}: {renderPhrase(param.limit!.say, tell)}{' '}
          <em>By {ruleWords(param.limit!.source)}.</em>
        </p>
      )}
    </div>
  );
}
