/** A point or vector in mm. y points up (towards the neck). */
export interface Point {
  readonly x: number;
  readonly y: number;
}

/**
 * A chain of cubic Béziers in mm: 3n + 1 points, n ≥ 1. Points 0, 3, 6 … are on the curve; the two
 * between them are that cubic's control points. A straight run is a cubic whose controls lie at its thirds.
 */
export type Path = readonly Point[];

/** A closed polygon in mm, first point not repeated. Counter-clockwise is positive area. */
export type Ring = readonly Point[];

/** A rigid motion: turn by `angle` (radians, counter-clockwise) about the origin, then move by (dx, dy); `mirror` flips x first. */
export interface Motion {
  readonly angle: number;
  readonly dx: number;
  readonly dy: number;
  readonly mirror?: boolean;
}

export interface Box {
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}

/** A place on a path: which cubic, and the parameter (0..1) on it. */
export interface PathPlace {
  readonly cubic: number;
  readonly t: number;
}
