/** Whom the worked example is about; said here so that the first page need not fetch the samples to know (`example.test.ts`). */
export const EXAMPLE_PEOPLE: readonly string[] = ['greta', 'ines', 'kit', 'pia', 'rosa', 'wilma'];
/** Its fittings. */
export const EXAMPLE_FITTINGS: readonly string[] = [
  'wilma-stage-bodice',
  'pia-stage-bodice',
  'rosa-knit-tee',
  'greta-a-line-skirt',
  'ines-work-trousers',
  'kit-chorus-smock',
];
