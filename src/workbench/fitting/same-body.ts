import { writeBody, type Body } from '../../garment/index.ts';

/** Whether two sheets say the same of a person. What was read back from the disk has its fields in another order than what was typed. */
export const sameBody = (a: Body, b: Body): boolean => a === b || writeBody(a) === writeBody(b);
