import { kindOfLevels, type Pattern, type SizeChart } from '../garment/index.ts';

/** A pattern of which only the size table is known: enough for a plan, not for pieces. */
export function tablePattern(
  id: string,
  name: string,
  chart: SizeChart,
  wearer: Pattern['wearer'] = 'woman',
): Pattern {
  const girths = Object.keys(chart.finished);
  return {
    format: 'pintrue-pattern',
    version: 2,
    id,
    name,
    about: 'A table without pieces: it gives the plan, and the amounts to draw on your own paper.',
    garment: kindOfChart(chart),
    wearer,
    cloth: { kind: 'woven' },
    chart,
    pieces: [],
    seams: [],
    followers: [],
    bands: [],
    levels: girths.map((level) => ({ level, pieces: [] })),
    cautions: [],
  };
}

/** The kind of garment a size table alone is taken for. */
export const kindOfChart = (chart: SizeChart): Pattern['garment'] =>
  kindOfLevels([...Object.keys(chart.finished), ...(chart.body['bust-girth'] ? ['bust'] : [])]);
