/** Colour names of CSS 2.1 and the ones drawing programs' users pick most (CSS Color 4 table; memory). */
const NAMES: Readonly<Record<string, string>> = {
  black: '#000000',
  silver: '#c0c0c0',
  gray: '#808080',
  grey: '#808080',
  white: '#ffffff',
  maroon: '#800000',
  red: '#ff0000',
  purple: '#800080',
  fuchsia: '#ff00ff',
  magenta: '#ff00ff',
  green: '#008000',
  lime: '#00ff00',
  olive: '#808000',
  yellow: '#ffff00',
  navy: '#000080',
  blue: '#0000ff',
  teal: '#008080',
  aqua: '#00ffff',
  cyan: '#00ffff',
  orange: '#ffa500',
  pink: '#ffc0cb',
  brown: '#a52a2a',
  gold: '#ffd700',
  indigo: '#4b0082',
  violet: '#ee82ee',
  crimson: '#dc143c',
  tomato: '#ff6347',
  coral: '#ff7f50',
  turquoise: '#40e0d0',
  darkgreen: '#006400',
  darkblue: '#00008b',
  darkred: '#8b0000',
  steelblue: '#4682b4',
  orchid: '#da70d6',
  tan: '#d2b48c',
  chocolate: '#d2691e',
  lightgray: '#d3d3d3',
  lightgrey: '#d3d3d3',
  darkgray: '#a9a9a9',
  darkgrey: '#a9a9a9',
};

/** `#rrggbb`; null for `none`, `transparent` and fully clear colours. Unknown words get a colour of their own, so that two stay apart. */
export function svgColour(text: string | undefined, current: string): string | null {
  const value = (text ?? '').trim().toLowerCase();
  if (value === '' || value === 'none' || value === 'transparent') return null;
  if (value === 'currentcolor') return current;
  const short = /^#([0-9a-f])([0-9a-f])([0-9a-f])$/.exec(value);
  if (short) return `#${short[1]!.repeat(2)}${short[2]!.repeat(2)}${short[3]!.repeat(2)}`;
  if (/^#[0-9a-f]{6}/.test(value)) return value.slice(0, 7);
  const rgb = /^rgba?\(([^)]*)\)/.exec(value);
  if (rgb) {
    const parts = rgb[1]!.split(/[\s,/]+/).filter(Boolean);
    if (parts[3] !== undefined && Number.parseFloat(parts[3]) === 0) return null;
    const channel = (part: string | undefined): string => {
      const n = Number.parseFloat(part ?? '0');
      const byte = Math.round(part?.endsWith('%') ? n * 2.55 : n);
      return Math.min(255, Math.max(0, byte || 0))
        .toString(16)
        .padStart(2, '0');
    };
    return `#${channel(parts[0])}${channel(parts[1])}${channel(parts[2])}`;
  }
  if (value.startsWith('url(')) return '#000000';
  const named = NAMES[value];
  if (named) return named;
  let hash = 0;
  for (const letter of value.slice(0, 40)) hash = (hash * 31 + letter.codePointAt(0)!) % 0x1000000;
  return `#${hash.toString(16).padStart(6, '0')}`;
}
