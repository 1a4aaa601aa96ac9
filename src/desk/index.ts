export { openBytes, type Opened, type Wishes } from './open-bytes.ts';
export { bareName, fileName } from './file-name.ts';
export { kindOfChart, tablePattern } from './table-pattern.ts';
export * from './edit-pattern.ts';
export * from './edit-steps.ts';
export { DESK_WORDS } from './desk-words.ts';
