/**
 * Layers of ASTM D6673 (pattern interchange over DXF). Source: public summary of the standard
 * (docs/trade.md section 11; layers 1–15 and 80–83 second-hand, 84–87 memory).
 */
export const DXF_LAYERS = {
  boundary: 1,
  turnPoints: 2,
  curvePoints: 3,
  notches: 4,
  gradeReference: 5,
  mirror: 6,
  grain: 7,
  internal: 8,
  stripe: 9,
  plaid: 10,
  cutout: 11,
  drill: 13,
  sew: 14,
  annotation: 15,
  notchT: 80,
  notchCastle: 81,
  notchCheck: 82,
  notchU: 83,
} as const;

/** All layers that hold notches, whatever their shape. */
export const NOTCH_LAYERS: ReadonlySet<number> = new Set([4, 80, 81, 82, 83]);
