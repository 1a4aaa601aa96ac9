import { CATALOGUE, EVERYDAY } from '../../alter/index.ts';

/** The catalogue without its geometry: names, amounts and limits, for the page's list, with what people call each. Loaded when the list is looked at. */
export const ENTRY_LIST = CATALOGUE.map(({ make: _make, sentence: _sentence, ...rest }) => ({
  ...rest,
  alsoCalled: EVERYDAY[rest.id]!,
}));
export type CatalogueEntry = (typeof ENTRY_LIST)[number];
