/** Less sure than this, 0..1, it is asked what something is (docs/formats.md). */
const SURE = 0.8;

/** Whether a person has to be asked what a piece or an edge is. What its maker wrote has no confidence, and bears no doubt. */
export const inDoubt = ({
  role,
  confidence = role === undefined ? 0 : 1,
}: {
  readonly role?: string;
  readonly confidence?: number;
}): boolean => role === undefined || confidence < SURE;
