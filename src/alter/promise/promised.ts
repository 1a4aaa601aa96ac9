import { dartIntake, dartOf } from '../dart/dart.ts';
import { leaders, limbsAt, panels, pieceAt } from '../../garment/index.ts';
import type { BodySide, DrawnPiece, EdgeRole, Garment, Half, Level } from '../../garment/index.ts';
import type { EdgeSpan, Quantity } from '../../measure/index.ts';
import type { Values } from '../entry/alteration.ts';

/** One thing that an alteration promises, as data: what is measured, and by how much it changes. */
export interface Promised {
  readonly of: Quantity;
  /** mm, or degrees of a dart's angle; 0: it stays as it was. */
  readonly by: number;
}

/** What an entry promises, with its amounts, on a garment. */
export type Promises = (values: Values, garment: Garment) => readonly Promised[];

export const BOTH: readonly Half[] = ['front', 'back'];

/** A girth, all round or of a half or a side. */
export const girth = (
  level: Level,
  by: number,
  of: { readonly half?: Half; readonly side?: BodySide } = {},
): Promised => ({ of: { is: 'girth', level, ...of }, by });

/** Edges of a role, on each side of the body. */
export const edges = (span: EdgeSpan & { readonly side?: BodySide }, by: number): Promised => ({
  of: { is: 'length', ...span },
  by,
});

/** The edge's own length. */
export const along = (role: EdgeRole, half: Half, by: number, side?: BodySide): Promised =>
  edges({ role, half, as: 'along', ...(side ? { side } : {}) }, by);
/** How far up and down the edge reaches, in all or beyond a level. */
export const upright = (
  role: EdgeRole,
  half: Half,
  by: number,
  part: { readonly above?: Level; readonly below?: Level; readonly side?: BodySide } = {},
): Promised => edges({ role, half, as: 'up', ...part }, by);

/** Edges of a half that keep their length. */
export const keep = (half: Half, ...roles: readonly EdgeRole[]): Promised[] =>
  roles.map((role) => along(role, half, 0));

/** Girths of the trunk that the garment is measured at, each to change by so much (nothing when not said). */
export const girths = (
  garment: Garment,
  by: (level: Level) => number | undefined = () => 0,
  half?: Half,
): Promised[] =>
  garment.levels
    .filter((l) => l.pieces.length > 0 && l.level !== 'hem' && !SLEEVE_LEVELS.includes(l.level))
    .flatMap(({ level }) => {
      const mm = by(level);
      return mm === undefined ? [] : [girth(level, mm, half ? { half } : {})];
    });

const SLEEVE_LEVELS: readonly Level[] = ['upper-arm', 'elbow', 'wrist'];

/** Whether the pieces of a half (of both) have an edge of the role. */
export const has = (garment: Garment, role: EdgeRole, half?: Half): boolean =>
  BOTH.some(
    (h) =>
      (half ?? h) === h &&
      panels(garment, h).some((p) => p.edges.some((e) => e.role === role || e.also === role)),
  );

/** The role of what a half closes with in the middle: trousers have their crotch seam there. */
export const middle = (garment: Garment, half: Half): EdgeRole =>
  has(garment, 'rise', half) ? 'rise' : 'centre';

/** An amount for each leg as it tells on a girth: at a limb's level it is measured round one. */
export const eachLeg = (level: Level, mm: number): number => mm * (limbsAt(level) === 2 ? 1 : 2);

/** The dart meant by an entry's parameters, before anything is done to it; undefined where the entry will refuse. */
export function meantDart(
  values: Values,
  garment: Garment,
): { piece: DrawnPiece; dart: string; mouth: number; degrees: number } | undefined {
  const id = values.word('piece');
  const piece = id === '' ? leaders(garment).find((p) => p.darts.length > 0) : pieceAt(garment, id);
  const wanted = values.word('dart');
  const dart = wanted === '' ? piece?.darts[0] : piece?.darts.find((d) => d.id === wanted);
  if (!piece || !dart) return undefined;
  const place = dartOf(piece, dart.id);
  return {
    piece,
    dart: dart.id,
    mouth: dartIntake(place),
    degrees: (Math.abs(place.angle) * 180) / Math.PI,
  };
}
