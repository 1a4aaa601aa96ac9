import { chainLength, edgeAt } from '../../garment/index.ts';
import type { EdgeRef, Garment } from '../../garment/index.ts';

/**
 * How long a chain of today's was in the garment before the alteration, mm. An edge that the alteration made (the other half of a fold that was parted, a dart's new leg)
 * was not there and had no length.
 */
export const lengthThen = (then: Garment, chain: readonly EdgeRef[]): number =>
  chainLength(
    then,
    chain.filter((ref) => edgeAt(then, ref)),
  );
