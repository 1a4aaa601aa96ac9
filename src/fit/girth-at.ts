import { bodyValue, MM_PER, USUAL_HIP_DEPTH, type Body, type SizeChart } from '../garment/index.ts';

/** Waist to high hip when nothing is known: the middle of 3 to 4 in (New Mexico C-209, seen). mm */
const HIGH_HIP_DEPTH = 3.5 * MM_PER.in;

/** Where high hip and hip lie below the waist, mm, and whether anything says where the hip lies. */
export interface Depths {
  readonly highHip: number;
  readonly hip: number;
  readonly hipKnown: boolean;
}

/** Middle of what a chart says of a depth, mm, if it says anything. */
function chartDepth(chart: SizeChart, id: 'hip-depth' | 'high-hip-depth'): number | undefined {
  const known = (chart.body[id] ?? []).filter((v) => v !== null);
  return known[Math.floor(known.length / 2)];
}

/** The body's own depths; where it was not measured the chart's, and where nobody knows the common ones. */
export function depthsOf(body: Body, chart: SizeChart): Depths {
  const hip = bodyValue(body, 'hip-depth') ?? chartDepth(chart, 'hip-depth');
  const depth = hip ?? USUAL_HIP_DEPTH;
  const highHip =
    bodyValue(body, 'high-hip-depth') ??
    chartDepth(chart, 'high-hip-depth') ??
    (HIGH_HIP_DEPTH / USUAL_HIP_DEPTH) * depth;
  return { hip: depth, highHip: Math.min(highHip, depth), hipKnown: hip !== undefined };
}

interface Girths {
  readonly waist: number | null | undefined;
  readonly highHip: number | null | undefined;
  readonly hip: number | null | undefined;
}

/**
 * Girth at a depth below the waist, straight between the girths known at waist, high hip and hip. mm.
 * Null when the depth lies outside what is known.
 */
function girthAtDepth(girths: Girths, depths: Depths, depth: number): number | null {
  const knots = [
    { at: 0, girth: girths.waist },
    { at: depths.highHip, girth: girths.highHip },
    { at: depths.hip, girth: girths.hip },
  ].filter((k): k is { at: number; girth: number } => k.girth !== null && k.girth !== undefined);
  for (let i = 1; i < knots.length; i++) {
    const [above, below] = [knots[i - 1]!, knots[i]!];
    if (depth < above.at || depth > below.at) continue;
    const share = below.at === above.at ? 0 : (depth - above.at) / (below.at - above.at);
    return above.girth + share * (below.girth - above.girth);
  }
  return null;
}

/** Body girth at a depth below the waist. */
export function bodyAtDepth(body: Body, depths: Depths, depth: number): number | null {
  const girths = {
    waist: bodyValue(body, 'waist-girth'),
    highHip: bodyValue(body, 'high-hip-girth'),
    hip: bodyValue(body, 'hip-girth'),
  };
  return girthAtDepth(girths, depths, depth);
}

/** The chart's body girth at a depth below the waist, per size; the chart's own hip depth is not used, so that both are compared at one height. */
export function chartAtDepth(chart: SizeChart, depths: Depths, depth: number): (number | null)[] {
  const row = (id: 'waist-girth' | 'high-hip-girth' | 'hip-girth', i: number): number | null =>
    chart.body[id]?.[i] ?? null;
  return chart.sizes.map((_, i) =>
    girthAtDepth(
      { waist: row('waist-girth', i), highHip: row('high-hip-girth', i), hip: row('hip-girth', i) },
      depths,
      depth,
    ),
  );
}
