import { DEFAULT_CHOICES } from '../garment/index.ts';
import type { PlanInput } from './input.ts';

/** A dress in calico, nothing chosen: what a plan needs beside a body and a size table. */
export const PLAIN_DRESS: Omit<PlanInput, 'body' | 'chart'> = {
  fabric: { name: 'calico', kind: 'woven' },
  choices: DEFAULT_CHOICES,
  cloth: { kind: 'woven' },
  garment: 'dress',
};
