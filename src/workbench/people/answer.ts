import {
  measureName,
  renderPhrase,
  tellOf,
  type Body,
  type MeasureId,
  type Question,
} from '../../garment/index.ts';
import { store } from '../store/use-store.ts';
import { putReading } from './readings.ts';

/** Takes what a question suggests: the reading as it was meant, or two readings exchanged. */
export const answer =
  (body: Body) =>
  ({ measure, other, suggest }: Question): void => {
    if (!suggest) return;
    const name = (id: MeasureId): string => measureName(id, body.wearer);
    const said = renderPhrase(suggest.say, tellOf(body));
    const last = (body.readings[measure]?.length ?? 1) - 1;
    const on = new Date().toISOString().slice(0, 10);
    store.change(
      'person',
      body.id,
      (b) =>
        other
          ? {
              ...b,
              readings: { ...b.readings, [measure]: b.readings[other], [other]: b.readings[measure] },
            }
          : putReading(b, measure, last, suggest.value, said, on),
      other ? `Exchanged ${name(measure)} and ${name(other)}` : `${name(measure)}: ${said}`,
    );
  };
