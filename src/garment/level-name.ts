import { LEVELS } from './level.ts';
import type { Level } from './piece.ts';

/** What a level is called: `high hip`. A level of the pattern's own is called by its id, in words. */
export const levelName = (level: Level): string =>
  LEVELS.find((l) => l.level === level)?.name ?? level.replaceAll('-', ' ');
