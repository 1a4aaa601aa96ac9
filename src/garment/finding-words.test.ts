import { describe, expect, it } from 'vitest';
import {
  findingMaker,
  len,
  levelWord,
  phraseOf,
  renderPhrase,
  sayFinding,
  t,
  TELL_CM,
  TELL_IN,
} from './index.ts';

const TABLE = {
  'too-long': ({ level, by }: { level: string; by: number }) =>
    t`At the ${levelWord(level)} it is ${len(by)} too long.`,
  plain: () => t`Nothing to say.`,
};
const finding = findingMaker(TABLE);

describe('a finding', () => {
  it('is a code and its values, said at the face in the unit of whoever reads', () => {
    const made = finding(
      'too-long',
      'note',
      { level: 'high-hip' },
      { level: 'high-hip', by: 25.4 },
      { amount: 25.4 },
    );
    expect(made).toEqual({
      code: 'too-long',
      severity: 'note',
      where: { level: 'high-hip' },
      amount: 25.4,
      values: { level: 'high-hip', by: 25.4 },
    });
    expect(sayFinding(TABLE, made, TELL_IN)).toBe('At the high hip it is 1 in too long.');
    expect(sayFinding(TABLE, made, TELL_CM)).toBe('At the high hip it is 2.5 cm too long.');
  });

  it('is refused by the compiler without the values its sentence says', () => {
    // @ts-expect-error `by` is missing
    finding('too-long', 'note', {}, { level: 'hip' });
    // @ts-expect-error there is no such code
    finding('too-short', 'note', {}, {});
    expect(sayFinding(TABLE, finding('plain', 'note', {}, {}), TELL_CM)).toBe('Nothing to say.');
  });

  it('says its code where the table has no words for it', () => {
    expect(renderPhrase(phraseOf(TABLE, 'not-known-here', {}), TELL_CM)).toBe('not known here.');
  });
});
