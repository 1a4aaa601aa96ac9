import { expect, it } from 'vitest';
import type { Finding, Severity } from '../../garment/index.ts';
import { stillOpen } from './still-open.ts';

const found = (severity: Severity): Finding => ({ code: 'seam-differs', severity, where: {}, values: {} });

it('warns before printing of what is still open, the gravest first', () => {
  expect(stillOpen([found('note')])).toBeNull();
  expect(stillOpen([found('note'), found('warning')])).toEqual({
    severity: 'warning',
    words: 'One thing is still to be settled. Look before you print.',
  });
  expect(stillOpen([found('warning'), found('error'), found('warning')])).toEqual({
    severity: 'error',
    words: '3 things are still to be settled, and as one of them stands the pieces cannot be cut.',
  });
});
