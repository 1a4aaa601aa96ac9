/** Every tolerance of the house, with its reason. Lengths in mm unless said. Never one number for two dimensions. */

/** Stored geometry: coordinates are kept to a hundredth of a millimetre, finer than any pencil line. */
export const STORED_MM = 0.01;
/** Curve approximation (offset, refit, import): a twentieth of a millimetre, a tenth of a drawn line's width. */
export const CURVE_MM = 0.05;
/** Default flattening of a curve to a polyline: small against CURVE_MM, so that it never shows. */
export const FLATTEN_MM = 0.01;
/** Arc lengths are computed to this bound by adaptive quadrature. */
export const LENGTH_MM = 1e-6;
/** Anything through a file format and back. */
export const ROUND_TRIP_MM = 0.1;
/** Walked seam difference: from here on it is a note / a warning / an error. */
export const SEAM_NOTE_MM = 0.5;
export const SEAM_WARNING_MM = 1.5;
export const SEAM_ERROR_MM = 3;
/** A finished measure against its target, all round. */
export const FINISHED_MM = 3;
/** Printed scale, as a share of the length. */
export const PRINT_SCALE = 0.001;
/** A cubic whose controls are this near to its thirds is straight: far below LENGTH_MM even over a hundred cubics. */
export const STRAIGHT_MM = 1e-9;
/** Two points this near are one point: a thousandth of what is stored, a thousand times the rounding of float64 at 10 m. */
export const SAME_MM = 1e-5;
