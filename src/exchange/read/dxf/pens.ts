import { field, fields, numberOf, type Raw } from './raw.ts';

/** What the tables of a file say of layers and line types. */
export interface DxfTables {
  /** Colour number and line type by layer. */
  readonly layers: ReadonlyMap<
    string,
    { readonly colour: number; readonly type: string; readonly shown: boolean }
  >;
  /** Dash and gap lengths by line type, in the file's units. */
  readonly types: ReadonlyMap<string, readonly number[]>;
}

export function readTables(list: readonly Raw[]): DxfTables {
  const layers = new Map<string, { colour: number; type: string; shown: boolean }>();
  const types = new Map<string, readonly number[]>();
  for (const { kind, pairs } of list) {
    const name = field(pairs, 2)?.value ?? '';
    if (kind === 'LAYER') {
      const colour = numberOf(field(pairs, 62), 7);
      layers.set(name, {
        colour: Math.abs(colour),
        type: (field(pairs, 6)?.value ?? '').toUpperCase(),
        // A layer whose colour is negative is switched off.
        shown: colour >= 0,
      });
    } else if (kind === 'LTYPE') {
      types.set(
        name.toUpperCase(),
        fields(pairs, 49).map((pair) => Math.abs(numberOf(pair, 0))),
      );
    }
  }
  return { layers, types };
}

/** How one entity is drawn. Colour 256 and type BYLAYER mean the layer's own. */
export interface DxfPen {
  /** `#rrggbb`. */
  readonly colour: string;
  readonly dash: readonly number[];
  /** Hundredths of a millimetre; negative for the default. */
  readonly weight: number;
}

export function penOf({ pairs }: Raw, layer: string, tables: DxfTables): DxfPen {
  const own = tables.layers.get(layer);
  const number = numberOf(field(pairs, 62), 256);
  const exact = field(pairs, 420);
  const type = (field(pairs, 6)?.value ?? 'BYLAYER').toUpperCase();
  const dash = tables.types.get(type === 'BYLAYER' ? (own?.type ?? '') : type) ?? [];
  return {
    colour: exact
      ? `#${(numberOf(exact, 0) & 0xffffff).toString(16).padStart(6, '0')}`
      : indexed(number === 256 || number === 0 ? (own?.colour ?? 7) : Math.abs(number)),
    dash,
    weight: numberOf(field(pairs, 370), -1),
  };
}

/** The nine named colours of the open DXF reference; 7 is black on paper. */
const NAMED = [
  '#000000',
  '#ff0000',
  '#ffff00',
  '#00ff00',
  '#00ffff',
  '#0000ff',
  '#ff00ff',
  '#000000',
  '#808080',
  '#c0c0c0',
];

/** Numbers from 10 go round the colour wheel in 24 steps of ten shades; nearly so, and each its own. */
function indexed(number: number): string {
  const named = NAMED[number];
  if (named) return named;
  const hue = ((Math.floor(number / 10) - 1) % 24) * 15;
  const value = 1 - 0.08 * (number % 10);
  const part = (shift: number): string => {
    const k = (shift + hue / 60) % 6;
    const level = value - value * Math.max(0, Math.min(k, 4 - k, 1));
    return Math.round(255 * Math.min(1, Math.max(0, level)))
      .toString(16)
      .padStart(2, '0');
  };
  return `#${part(5)}${part(3)}${part(1)}`;
}
