import { describe, it } from 'vitest';
import { memoryShelf } from './memory-shelf.ts';
import { SHELF_CASES } from './shelf.test-case.ts';

/** The browser's own storage is held to the same cases in test/browser/shelf.spec.ts. */
describe('a shelf in memory', () => {
  it.each(SHELF_CASES)('$name', async ({ run }) => {
    const shelf = memoryShelf();
    await run(shelf, shelf);
  });
});
