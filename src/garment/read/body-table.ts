import type { SizeChart } from '../chart.ts';
import { MM_PER } from '../words/length-unit.ts';
import type { MeasureId } from '../measure/measure-id.ts';

/** How sure we are of a published figure: read in the source, recalled, or computed by us. */
export type SourceMark = 'seen' | 'memory' | 'derived';

/** A published table of body measures by size. It says nothing about any garment. */
export interface BodyTable {
  readonly id: string;
  readonly name: string;
  readonly wearer: 'woman' | 'man' | 'child';
  readonly unit: 'in' | 'cm';
  readonly sizes: readonly string[];
  readonly rows: Readonly<Partial<Record<MeasureId, readonly (number | null)[]>>>;
  readonly waist: 'natural' | 'iso' | 'unsaid';
  /** Where it is from and of when; shown with the figures. */
  readonly source: string;
  readonly mark: SourceMark;
}

/** The table as a size chart in mm, without finished measurements. */
export function bodyTableChart(table: BodyTable): SizeChart {
  const rows = Object.entries(table.rows) as [MeasureId, readonly (number | null)[]][];
  const mm = (v: number | null): number | null => (v === null ? null : v * MM_PER[table.unit]);
  return {
    sizes: table.sizes.map((id) => ({ id, label: id })),
    waist: table.waist,
    body: Object.fromEntries(rows.map(([id, row]) => [id, row.map(mm)])),
    finished: {},
    finishedLengths: {},
    source: table.source,
  };
}
