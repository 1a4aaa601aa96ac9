import type { MeasureId } from './measure/measure-id.ts';
import type { Level } from './piece.ts';

/** What a kind of garment is to whoever plans, draws or names it. */
interface GarmentKindRow {
  readonly kind: string;
  /** With its article, as in “taken for a dress”. */
  readonly called: string;
  /** Where it hangs from: what begins at the waist has no neck, shoulder or armhole. */
  readonly from: 'shoulder' | 'waist';
  /** Trunk levels it covers, when only a chart is known. */
  readonly covers: readonly Level[];
  /** The girths its base size is chosen by: the first that body and chart both know. */
  readonly sizedBy: readonly MeasureId[];
  /** The length that decides whether its waist sits where the body's is. */
  readonly hungBy: MeasureId;
  /** Column of the published wearing ease. */
  readonly easeColumn: 'upper' | 'skirt' | 'trousers';
  /** Column of the chart of fit categories that judges its bust. */
  readonly bustColumn: 'dress' | 'jacket';
  /** Has legs: cut by the seat, and has a crotch. */
  readonly legs: boolean;
}

const TRUNK_LEVELS = ['bust', 'waist', 'high-hip', 'hip'] as const;
const LOWER_GIRTHS = ['hip-girth', 'waist-girth'] as const;
const UPPER = {
  from: 'shoulder',
  covers: TRUNK_LEVELS,
  sizedBy: ['bust-girth', 'upper-bust-girth', ...LOWER_GIRTHS],
  hungBy: 'back-waist-length',
  easeColumn: 'upper',
  bustColumn: 'dress',
  legs: false,
} as const;
const LOWER = {
  from: 'waist',
  covers: TRUNK_LEVELS.slice(1),
  sizedBy: LOWER_GIRTHS,
  hungBy: 'hip-depth',
  bustColumn: 'dress',
} as const;

/** The kinds of garment, in the order in which they are offered. */
const GARMENT_KIND_TABLE = [
  { kind: 'bodice', called: 'a bodice', ...UPPER },
  { kind: 'dress', called: 'a dress', ...UPPER },
  { kind: 'top', called: 'a top', ...UPPER },
  { kind: 'skirt', called: 'a skirt', ...LOWER, easeColumn: 'skirt', legs: false },
  { kind: 'trousers', called: 'trousers', ...LOWER, easeColumn: 'trousers', legs: true },
  { kind: 'jacket', called: 'a jacket', ...UPPER, bustColumn: 'jacket' },
  { kind: 'smock', called: 'a smock', ...UPPER },
] as const satisfies readonly GarmentKindRow[];

export type GarmentKind = (typeof GARMENT_KIND_TABLE)[number]['kind'];

/** Names of the kinds, in the order in which they are offered. */
export const GARMENT_KINDS: readonly GarmentKind[] = GARMENT_KIND_TABLE.map((row) => row.kind);

const BY_KIND = new Map<GarmentKind, GarmentKindRow>(GARMENT_KIND_TABLE.map((row) => [row.kind, row]));

/** All that is known of a kind of garment. */
export const garmentKind = (kind: GarmentKind): GarmentKindRow => BY_KIND.get(kind)!;

/** Hangs from the shoulder, so that it has a neck and armholes. */
export const fromShoulder = (kind: GarmentKind): boolean => garmentKind(kind).from === 'shoulder';

/** The kind a size table alone speaks of: one with a bust is taken for a dress, any other for a skirt. */
export const kindOfLevels = (levels: readonly Level[]): GarmentKind =>
  levels.includes('bust') ? 'dress' : 'skirt';
