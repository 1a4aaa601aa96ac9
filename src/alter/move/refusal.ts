import type { Finding } from '../../garment/index.ts';

/**
 * An alteration that cannot be done on this pattern as asked. Thrown inside the room, caught by `applyStep`, which turns it into a finding
 * and leaves the garment as it was: never half an alteration.
 */
export class Refusal extends Error {
  readonly code: string;
  readonly where: Finding['where'];
  readonly amount: number | undefined;

  constructor(code: string, message: string, where: Finding['where'] = {}, amount?: number) {
    super(message);
    this.name = 'Refusal';
    this.code = code;
    this.where = where;
    this.amount = amount;
  }

  /** The same news as a finding. */
  finding(): Finding {
    const finding = { code: this.code, severity: 'error' as const, where: this.where, message: this.message };
    return this.amount === undefined ? finding : { ...finding, amount: this.amount };
  }
}
