/** What test/browser/shelf.spec.ts runs inside a page. */
export { openIndexedDbShelf } from '../../src/workbench/store/indexed-db-shelf.ts';
export { SHELF_CASES } from '../../src/workbench/store/shelf.test-case.ts';
