import type { Garment } from '../../garment/index.ts';
import { linesOf, type SightLine } from './sight-lines.ts';

/** Every line of the garment by its name, for those that are not drawn and for whoever would rather read than point. */
export function LinePick({ garment, onChoose }: { garment: Garment; onChoose: (line: SightLine) => void }) {
  const lines = linesOf(garment);
  return (
    <label className="field narrow">
      <span className="label">Or choose a line</span>
      <select
        value=""
        onChange={(event) => {
          const line = lines.find((l) => l.id === event.target.value);
          if (line) onChoose({ line, view: 'front' });
        }}
      >
        <option value="" disabled>
          by its name
        </option>
        {lines.map((l) => (
          <option key={l.id} value={l.id}>
            {l.name}
          </option>
        ))}
      </select>
    </label>
  );
}
