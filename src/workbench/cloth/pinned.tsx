import type { Pin, LaySettings } from '../../garment/index.ts';
import type { LayPicture, Lying } from './lay-worker.ts';

export const samePlace = (p: Pin, l: Pick<Lying, 'piece' | 'copy'>): boolean =>
  p.piece === l.piece && p.copy === l.copy;

/** A lying piece turned about its middle by so many degrees, as a pin. */
function turned(l: Lying, degrees: number): Pin {
  const a = (degrees * Math.PI) / 180;
  const [c, s] = [Math.cos(a), Math.sin(a)];
  const [x, y] = [l.at.x - l.x, l.at.y - l.y];
  return {
    piece: l.piece,
    copy: l.copy,
    x: l.at.x - (x * c - y * s),
    y: l.at.y - (x * s + y * c),
    rotation: (((l.rotation + degrees) % 360) + 360) % 360,
    mirrored: l.mirrored,
  };
}

/** How far a piece may be turned by hand: not at all with a nap, half round on grain, a quarter on cloth without grain. Degrees. */
const TURN = { 'one-way': 0, 'two-way': 180, free: 90 } as const;

/** The pieces that are held by a pin, each to be turned or let go. */
export function Pinned({
  picture,
  settings,
  onPins,
}: {
  picture: LayPicture;
  settings: LaySettings;
  onPins: (pins: readonly Pin[], say: string) => void;
}) {
  const { pins, nap } = settings;
  if (pins.length === 0) return null;
  const turn = TURN[nap];
  return (
    <ul className="stack tight plain-list" aria-label="Pinned pieces">
      {pins.map((pin) => {
        const lying = picture.lying.find((l) => samePlace(pin, l));
        const name = lying ? `${lying.number} ${lying.name}` : pin.piece;
        const rest = pins.filter((p) => p !== pin);
        return (
          <li key={`${pin.piece}/${pin.copy}`} className="row">
            <span>{name} is pinned</span>
            {lying && turn > 0 && lying.as !== 'on-fold' && (
              <button
                type="button"
                className="act"
                onClick={() => onPins([...rest, turned(lying, turn)], `${name}: turned`)}
              >
                Turn<span className="unseen"> {name}</span> {turn === 180 ? 'half round' : 'a quarter'}
              </button>
            )}
            <button type="button" className="act" onClick={() => onPins(rest, `${name}: let go`)}>
              Let go<span className="unseen"> of {name}</span>
            </button>
          </li>
        );
      })}
      {pins.length > 1 && (
        <li>
          <button type="button" className="act" onClick={() => onPins([], 'let every piece go')}>
            Let every piece go
          </button>
        </li>
      )}
    </ul>
  );
}
