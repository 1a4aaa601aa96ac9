import { describe, expect, it } from 'vitest';
import { cautionsFor } from './caution-table.ts';
import { TELL_CM, TELL_IN, renderPhrase } from './index.ts';

const words = (topics: readonly string[], tell = TELL_IN): string[] =>
  cautionsFor(topics).map((c) => renderPhrase(c.words, tell));

describe('cautions', () => {
  it('say how far a cord may hang in the person’s own unit: 3 in, 75 mm (16 CFR 1120)', () => {
    // 75 mm is 2 61/64 in: to the sixteenth 2 15/16, the safe side of 3.
    expect(words(['child-drawstring'])[0]).toContain('at most 2 15/16 in outside');
    expect(words(['child-drawstring'], TELL_CM)[0]).toContain('at most 7.5 cm outside');
  });

  it('name a topic that has no words here instead of dropping it', () => {
    const [known, unknown] = words(['tight', 'loose-beads']);
    expect(known).toContain('breathe');
    expect(unknown).toContain('loose beads');
  });

  it('are said once each, whatever the topic was called before', () => {
    expect(cautionsFor(['small-parts', 'child-small-parts', 'tight']).map((c) => c.id)).toEqual([
      'child-small-parts',
      'tight',
    ]);
  });
});
