export { openBytes, type Opened, type Wishes } from './open-bytes.ts';
export { bareName, fileName } from './file-name.ts';
export { kindOfChart, tablePattern } from './table-pattern.ts';
export * from './edit-pattern.ts';
export * from './edit-steps.ts';
export { DESK_WORDS } from './desk-words.ts';
export { laySaid, laySettings, putLaySettings } from './lay-settings.ts';
export { clothChoice, layJob, offerOf } from './lay-job.ts';
export { fittingSheet, patternSheet } from './fitting-sheet.ts';
