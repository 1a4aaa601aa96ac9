/** Distance of the armhole notches from the underarm point, along the seam; no ease below them. One notch in front, two behind. */
export const ARMHOLE_NOTCH = { front: 78, back: 84 };
/** Panel-seam notches lie this far above and below the bust point; the ease is between them. */
export const BUST_NOTCH = 50;
