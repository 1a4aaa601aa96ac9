import type { Body, MeasureId, Reading } from '../../garment/index.ts';

/** Puts a reading in the place of number `n`, or after the last. `typed` and the day are kept with it. */
export function putReading(
  body: Body,
  id: MeasureId,
  n: number,
  value: number,
  typed: string,
  on: string,
): Body {
  const old = body.readings[id] ?? [];
  const side = old[n]?.side;
  const reading: Reading = { value, typed, on, ...(side ? { side } : {}) };
  const next = n < old.length ? old.map((r, i) => (i === n ? reading : r)) : [...old, reading];
  return { ...body, readings: { ...body.readings, [id]: next } };
}

/** Says on which side reading `n` was taken; undefined: not said. */
export function putSide(body: Body, id: MeasureId, n: number, side: Reading['side']): Body {
  const next = (body.readings[id] ?? []).map((r, i): Reading => {
    if (i !== n) return r;
    const { side: _old, ...rest } = r;
    return side ? { ...rest, side } : rest;
  });
  return { ...body, readings: { ...body.readings, [id]: next } };
}

/** Takes reading `n` away; a measure without readings leaves the list. */
export function dropReading(body: Body, id: MeasureId, n: number): Body {
  const next = (body.readings[id] ?? []).filter((_, i) => i !== n);
  const { [id]: _gone, ...rest } = body.readings;
  return { ...body, readings: next.length ? { ...rest, [id]: next } : rest };
}

/** Keeps with the last readings of these measures that they were doubted and are right. */
export function saySure(body: Body, ids: readonly MeasureId[]): Body {
  const sure = ids.map((id) => {
    const readings = body.readings[id] ?? [];
    return [id, readings.map((r, i): Reading => (i === readings.length - 1 ? { ...r, sure: true } : r))];
  });
  return { ...body, readings: { ...body.readings, ...Object.fromEntries(sure) } };
}
