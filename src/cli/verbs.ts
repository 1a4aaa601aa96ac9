import type { Verb } from './verb.ts';
import { alter } from './verbs/alter.ts';
import { check } from './verbs/check.ts';
import { cloth } from './verbs/cloth.ts';
import { lay } from './verbs/lay.ts';
import { make } from './verbs/make.ts';
import { plan } from './verbs/plan.ts';
import { print } from './verbs/print.ts';
import { read } from './verbs/read.ts';
import { roles } from './verbs/roles.ts';
import { samples } from './verbs/samples.ts';
import { seams } from './verbs/seams.ts';
import { trial } from './verbs/trial.ts';
import { trueSeams } from './verbs/true.ts';
import { write } from './verbs/write.ts';

/** Everything `pintrue` can be told to do, in the order a person does it. */
export const VERBS: readonly Verb[] = [
  samples,
  read,
  roles,
  plan,
  make,
  alter,
  trial,
  trueSeams,
  seams,
  check,
  print,
  cloth,
  lay,
  write,
];
