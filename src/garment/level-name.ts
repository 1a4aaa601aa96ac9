import { LEVELS } from './level.ts';
import type { Level } from './piece.ts';
import type { Wearer } from './words/tell.ts';
import { wearerWord } from './words/wearer-words.ts';

/** What a level is called: `high hip`; of a man or a child a bust is a chest. A level of the pattern's own is called by its id, in words. */
export const levelName = (level: Level, wearer?: Wearer): string =>
  wearerWord(
    'level',
    level,
    LEVELS.find((l) => l.level === level)?.name ?? level.replaceAll('-', ' '),
    wearer,
  );
