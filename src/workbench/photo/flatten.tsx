import { renderPhrase, tellIn } from '../../garment/index.ts';
import { useState } from 'react';
import type { Known } from '../../exchange/index.ts';
import { distance, type Point } from '../../geometry/index.ts';
import { LengthField } from '../parts/length-field.tsx';
import { Handle } from './handle.tsx';
import type { Corners, SheetSaid } from './flat.ts';
import type { OpenedPhoto } from './photo-worker.ts';

/** Sheets one has at hand, long side by short side, mm. A sizes by ISO 216; Letter 11 × 8 ½ in. */
const SHEETS = {
  a4: { name: 'A4', long: 297, short: 210 },
  letter: { name: 'US Letter', long: 279.4, short: 215.9 },
  a3: { name: 'A3', long: 420, short: 297 },
  own: { name: 'another rectangle …', long: 300, short: 200 },
} as const;
type Sheet = keyof typeof SHEETS;
const CORNERS = ['upper left', 'upper right', 'lower right', 'lower left'];

interface Props {
  readonly photo: OpenedPhoto;
  readonly url: string;
  readonly show: 'in' | 'cm';
  readonly onFlatten: (given: SheetSaid) => void;
  readonly onScan: (dpi: number) => void;
}

/** The photo with the four corners of its sheet to confirm or drag, and the size of that sheet; or a scan's dots per inch. */
export function Flatten({ photo, url, show, onFlatten, onScan }: Props) {
  const [kind, setKind] = useState<'photo' | 'scan'>('photo');
  const [corners, setCorners] = useState<Corners>(photo.corners);
  const [sheet, setSheet] = useState<Sheet>(show === 'in' ? 'letter' : 'a4');
  const [own, setOwn] = useState({ wide: 300, high: 200 });
  const [more, setMore] = useState<readonly Known[]>([]);
  const [dpi, setDpi] = useState(300);
  const r = Math.max(photo.width, photo.height) / 60;
  // A sheet lies the way that its sides look longer.
  const flat =
    distance(corners[0], corners[1]) + distance(corners[2], corners[3]) >
    distance(corners[1], corners[2]) + distance(corners[3], corners[0]);
  const { long, short } = SHEETS[sheet];
  const size = sheet === 'own' ? own : flat ? { wide: long, high: short } : { wide: short, high: long };
  const putKnown = (i: number, part: Partial<Known>): void => setMore(more.with(i, { ...more[i]!, ...part }));
  const inside = (p: Point): Point => ({
    x: Math.min(photo.width, Math.max(0, p.x)),
    y: Math.min(photo.height, Math.max(0, p.y)),
  });
  return (
    <section className="sheet stack" aria-labelledby="flat-head">
      <h2 id="flat-head">How large is it?</h2>
      <div className="choice" role="group" aria-label="What kind of picture">
        <button
          type="button"
          className="act"
          aria-pressed={kind === 'photo'}
          onClick={() => setKind('photo')}
        >
          A photograph
        </button>
        <button type="button" className="act" aria-pressed={kind === 'scan'} onClick={() => setKind('scan')}>
          A flatbed scan
        </button>
      </div>
      {kind === 'scan' ? (
        <form
          className="row about"
          onSubmit={(e) => {
            e.preventDefault();
            onScan(dpi);
          }}
        >
          <label className="field">
            <span className="label">Dots per inch</span>
            <input
              type="number"
              min={30}
              max={4800}
              value={dpi}
              onChange={(e) => setDpi(Number(e.target.value))}
            />
          </label>
          <button type="submit" className="act main">
            Trace it
          </button>
        </form>
      ) : (
        <>
          <p>
            {photo.found
              ? 'The sheet was found. Look at its four corners and drag any that is off.'
              : `${photo.why ? renderPhrase(photo.why, tellIn(show)) : ''} Put the four rings on the corners of the sheet, or of any rectangle whose size you know.`}
          </p>
          <svg
            className="photo-picture"
            viewBox={`0 0 ${photo.width} ${photo.height}`}
            role="group"
            aria-label="The photograph with the corners of the sheet"
          >
            <image href={url} width={photo.width} height={photo.height} />
            <path className="photo-rim" d={`M${corners.map((c) => `${c.x} ${c.y}`).join('L')}Z`} />
            {corners.map((c, i) => (
              <Handle
                key={CORNERS[i]}
                at={c}
                r={r}
                step={1}
                name={`${CORNERS[i]} corner of the sheet`}
                onMove={(to) => setCorners(corners.with(i, inside(to)) as unknown as Corners)}
              />
            ))}
            {more.map((k, i) => (
              <Handle
                key={i}
                at={k.photo}
                r={r * 0.7}
                step={1}
                className="known"
                name={`known place ${i + 1}`}
                onMove={(to) => putKnown(i, { photo: inside(to) })}
              />
            ))}
          </svg>
          <form
            className="row about"
            onSubmit={(e) => {
              e.preventDefault();
              onFlatten({ corners, wide: size.wide, high: size.high, more });
            }}
          >
            <label className="field">
              <span className="label">The sheet is</span>
              <select value={sheet} onChange={(e) => setSheet(e.target.value as Sheet)}>
                {(Object.keys(SHEETS) as Sheet[]).map((s) => (
                  <option key={s} value={s}>
                    {SHEETS[s].name}
                  </option>
                ))}
              </select>
            </label>
            {sheet === 'own' && (
              <>
                <LengthField
                  label="upper left to upper right"
                  mm={own.wide}
                  show={show}
                  narrow
                  live
                  onAmount={(wide) => setOwn({ ...own, wide })}
                />
                <LengthField
                  label="upper left to lower left"
                  mm={own.high}
                  show={show}
                  narrow
                  live
                  onAmount={(high) => setOwn({ ...own, high })}
                />
              </>
            )}
            <button type="submit" className="act main">
              Lay it flat
            </button>
          </form>
          <details>
            <summary>A cutting mat or other known places make it more exact</summary>
            <div className="stack tight">
              <p className="small">
                With two or more known places besides the sheet’s corners the bend of the lens is reckoned
                out. Measure each from the sheet’s lower left corner: along its lower side, and up.
              </p>
              {more.map((k, i) => (
                <div key={i} className="row about">
                  {(['x', 'y'] as const).map((axis) => (
                    <LengthField
                      key={axis}
                      label={`place ${i + 1}, ${axis === 'x' ? 'along' : 'up'}`}
                      mm={k.mm[axis]}
                      show={show}
                      signed
                      narrow
                      live
                      onAmount={(mm) => putKnown(i, { mm: { ...k.mm, [axis]: mm } })}
                    />
                  ))}
                  <button type="button" className="act" onClick={() => setMore(more.toSpliced(i, 1))}>
                    Remove<span className="unseen"> place {i + 1}</span>
                  </button>
                </div>
              ))}
              <button
                type="button"
                className="act"
                onClick={() =>
                  setMore([
                    ...more,
                    { photo: { x: photo.width / 2, y: photo.height / 2 }, mm: { x: 500, y: 0 } },
                  ])
                }
              >
                A known place
              </button>
            </div>
          </details>
        </>
      )}
    </section>
  );
}
