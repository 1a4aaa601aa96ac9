import { LEVELS } from '../../garment/index.ts';

/** A level by its name in words; an unknown one by its id. */
export const levelName = (level: string): string => LEVELS.find((l) => l.level === level)?.name ?? level;
