import { expect, it } from 'vitest';
import { CAST, demoFittings } from '../../samples/index.ts';
import { EXAMPLE_FITTINGS, EXAMPLE_PEOPLE } from './example-ids.ts';

it('knows the worked example by the people and fittings it really has', () => {
  expect(EXAMPLE_PEOPLE.toSorted()).toEqual(CAST.map((body) => body.id).toSorted());
  expect(EXAMPLE_FITTINGS.toSorted()).toEqual(
    demoFittings()
      .map((f) => f.id)
      .toSorted(),
  );
});
