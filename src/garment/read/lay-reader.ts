import {
  CLOTHS,
  CUTTING_TOOLS,
  FIBRES,
  FOLDS,
  NAPS,
  type KeptLay,
  type LaySettings,
  type Pin,
  type Spoilt,
} from '../lay-settings.ts';
import {
  fields,
  flag,
  list,
  maybe,
  name,
  number,
  oneOf,
  record,
  whole,
  type Fields,
  type Read,
} from './json.ts';

const place = number(-1e6, 1e6);
const length = number(0, 1e6);
const readPin = fields<Pin>({
  piece: name,
  copy: whole(0, 10_000),
  x: place,
  y: place,
  rotation: number(-360, 360),
  mirrored: flag,
});
const readSpoilt = fields<Spoilt>({ fromEnd: place, fromEdge: place, long: length, high: length });
const readCorner = fields<LaySettings['remnant'][number]>({ x: place, y: place });

/** Bounds in mm: cloth is at least a hand wide, gaps and selvages are narrower than one. Cloth that shrinks by a third is no cloth for a garment. */
const SETTINGS: Fields<Partial<LaySettings>> = {
  width: maybe(number(100, 1e6)),
  fold: maybe(oneOf(...FOLDS)),
  nap: maybe(oneOf(...NAPS)),
  gap: maybe(number(0, 200)),
  selvage: maybe(number(0, 200)),
  repeatAlong: maybe(length),
  repeatAcross: maybe(length),
  pins: maybe(list(readPin, 0, 2_000)),
  spoilt: maybe(list(readSpoilt, 0, 500)),
  remnant: maybe(list(readCorner, 0, 500)),
  shrinkLength: maybe(number(0, 0.3)),
  shrinkWidth: maybe(number(0, 0.3)),
  price: maybe(number(0, 1e6)),
  pricePer: maybe(oneOf('metre', 'yard')),
  tool: maybe(oneOf(...CUTTING_TOOLS)),
  fibre: maybe(oneOf(...FIBRES)),
};

/** Reads what a fitting keeps of its cloths. */
export const readLay: Read<KeptLay> = record(oneOf(...CLOTHS), fields<Partial<LaySettings>>(SETTINGS));

/**
 * What an older document kept of its cloths, when anything could be kept there: what is a setting of ours and within its bounds. The rest never had
 * an effect: it was read as the usual one.
 */
export function layThatHolds(kept: unknown): KeptLay {
  const isRecord = (value: unknown): value is Record<string, unknown> =>
    typeof value === 'object' && value !== null && !Array.isArray(value);
  if (!isRecord(kept)) return {};
  const holds = ([key, value]: readonly [string, unknown]): boolean => {
    try {
      readLay({ shell: { [key]: value } }, '');
      return true;
    } catch {
      return false;
    }
  };
  return Object.fromEntries(
    CLOTHS.flatMap((cloth) => {
      const own = kept[cloth];
      return isRecord(own) ? [[cloth, Object.fromEntries(Object.entries(own).filter(holds))]] : [];
    }),
  ) as KeptLay;
}
