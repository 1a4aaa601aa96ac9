import type { FlatPhoto } from './photo-worker.ts';

const mm = (v: number): string => `${v < 1 ? v.toFixed(2) : v.toFixed(1)} mm`;

/** What the picture can be trusted with, in millimetres: the sewist compares it with a seam allowance. */
export function AccuracyWords({ flat }: { flat: FlatPhoto }) {
  const { accuracy: a } = flat;
  if (!a) return <p className="small">A scan lies flat by itself: a dot is {mm(flat.mmPerPixel)}.</p>;
  return (
    <div className="stack tight">
      <p>
        Over 400 mm expect to be within <strong>{mm(a.over400)}</strong> (
        {((a.over400 / 400) * 100).toFixed(1)} %).
      </p>
      <p className="small">
        A pixel is {mm(a.finest)} to {mm(a.coarsest)}; the known places are met within {mm(a.residualMost)}.{' '}
        {a.lensKnown
          ? 'The bend of the lens is reckoned out.'
          : 'The lens could not be judged: add known places for a truer picture.'}{' '}
        Far from the sheet it is less exact.
      </p>
    </div>
  );
}
