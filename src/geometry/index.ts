export * from './types.ts';
export * from './tolerance.ts';
