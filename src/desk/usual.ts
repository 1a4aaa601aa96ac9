import { MM_PER, type Body, type Fitting, type LaySettings } from '../garment/index.ts';

/** What is at hand in shops and printers where a unit is used (common practice); every face begins from it. */
interface Usual {
  readonly paper: string;
  /** Widths that cloth is sold in, mm. */
  readonly widths: readonly number[];
  /** The one a lay begins with, mm. */
  readonly width: number;
  readonly pricePer: LaySettings['pricePer'];
}

const USUAL: Readonly<Record<Body['show'], Usual>> = {
  in: {
    paper: 'letter',
    widths: [36, 45, 54, 60].map((w) => w * MM_PER.in),
    width: 54 * MM_PER.in,
    pricePer: 'yard',
  },
  cm: { paper: 'a4', widths: [900, 1100, 1400, 1500], width: 1400, pricePer: 'metre' },
};

export const usualIn = (unit: Body['show']): Usual => USUAL[unit];

/** The paper a fitting is printed on: as was decided, else the usual one in the person's unit. */
export const paperOf = ({ paper, body }: Pick<Fitting, 'paper' | 'body'>): string =>
  paper.paper ?? usualIn(body.show).paper;
