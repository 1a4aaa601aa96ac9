import { surveyJoint, type Surveyed } from '../checks/survey.ts';
import type { Body, MeasureId, Reading } from '../src/garment/index.ts';

/** What a random body is measured in: drawn together, as the rows of an open survey (checks/data: ANSUR I) vary together, widened. */
const DRAWN: readonly Surveyed[] = [
  'stature',
  'neck-base-girth',
  'shoulder-length',
  'upper-bust-girth',
  'bust-girth',
  'under-bust-girth',
  'waist-girth',
  'hip-girth',
  'back-waist-length',
  'bust-spread',
  'upper-arm-girth',
  'scye-depth',
  'across-back',
];

/** The survey's people are soldiers; everyone else spreads wider: standard deviations half as large again. */
const WIDER = 1.5;

/** Mulberry32: a small seeded generator, so that a failing body can be drawn again. */
export function seeded(seed: number): () => number {
  let a = seed >>> 0;
  return () => {
    a = (a + 0x6d2b79f5) >>> 0;
    let t = Math.imul(a ^ (a >>> 15), 1 | a);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

function cholesky(m: readonly (readonly number[])[]): number[][] {
  const l = m.map((row) => row.map(() => 0));
  for (let i = 0; i < m.length; i++) {
    for (let j = 0; j <= i; j++) {
      let s = m[i]![j]!;
      for (let k = 0; k < j; k++) s -= l[i]![k]! * l[j]![k]!;
      l[i]![j] = i === j ? Math.sqrt(Math.max(s, 1e-9)) : s / l[j]![j]!;
    }
  }
  return l;
}

/**
 * Endless random bodies: `scale` 1 for adults; a child is an adult body scaled to its height, which keeps it plausible in its own
 * proportions only roughly (there is no open survey of children), so children's tests ask no more than this can carry.
 */
export function randomBodies(wearer: 'woman' | 'man' | 'child', seed: number): () => Body {
  const { mean, covariance } = surveyJoint(wearer === 'man' ? 'men' : 'women', DRAWN);
  const l = cholesky(covariance);
  const random = seeded(seed);
  const normal = (): number => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
  let count = 0;
  return () => {
    const z = DRAWN.map(normal);
    const scale = wearer === 'child' ? (980 + random() * 540) / mean[0]! : 1;
    const readings: Partial<Record<MeasureId, Reading[]>> = {};
    const put = (id: MeasureId, value: number): void => {
      readings[id] = [{ value: Math.round(value * scale) }];
    };
    DRAWN.forEach((id, k) => put(id, mean[k]! + WIDER * l[k]!.reduce((sum, c, j) => sum + c * z[j]!, 0)));
    put('wrist-girth', 155 + 9 * WIDER * normal());
    // A third of all bodies come without the measures people most often leave out.
    if (random() < 1 / 3) delete readings['upper-bust-girth'];
    if (random() < 1 / 3) delete readings['upper-arm-girth'];
    count++;
    const waist = random() < 0.8 ? 'natural' : 'unsaid';
    return {
      id: `body-${seed}-${count}`,
      name: `Body ${count}`,
      wearer,
      show: random() < 0.5 ? 'in' : 'cm',
      waist,
      readings,
    };
  };
}
