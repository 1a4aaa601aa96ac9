import {
  bodyValue,
  bodyTableChart,
  EN_CHILDREN,
  question,
  type Body,
  type MeasureId,
  type Question,
} from '../garment/index.ts';
import { atIndex, indexAlong } from './cut-size.ts';

/**
 * How far a child's measure may lie from the table at its height before it is asked about, as shares of the table's figure. No open survey of
 * children stands behind these: they are wide, and catch slips, not builds.
 */
const ROOM: Readonly<Partial<Record<MeasureId, readonly [least: number, most: number]>>> = {
  'bust-girth': [0.78, 1.45],
  'waist-girth': [0.75, 1.6],
  'hip-girth': [0.78, 1.5],
  'back-waist-length': [0.8, 1.25],
  'arm-length': [0.82, 1.2],
  'head-girth': [0.9, 1.13],
};

const table = bodyTableChart(EN_CHILDREN);
const heights = table.body.stature!.map((v) => v!);

/** What a child's height makes unlikely among its other measures. Nothing without a height, or for a height outside of the table. */
export function childQuestions(body: Body): readonly Question[] {
  const height = bodyValue(body, 'stature');
  if (height === undefined || height < heights[0]! - 60 || height > heights.at(-1)! + 60) return [];
  const index = indexAlong(heights, height);
  return (Object.keys(ROOM) as MeasureId[]).flatMap((id) => {
    const value = bodyValue(body, id);
    const row = table.body[id];
    if (value === undefined || row === undefined) return [];
    const usual = atIndex(
      row.map((v) => v!),
      index,
    );
    const [least, most] = ROOM[id]!;
    if (value >= usual * least && value <= usual * most) return [];
    return [question('unusual', id, { measure: id, value, is: { height, usual } })];
  });
}
