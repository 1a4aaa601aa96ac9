/** A file's name without its folders. */
export const fileName = (path: string): string => path.replace(/^.*[/\\]/, '');

/** What a file is about, by its name: without folders and ending. `fallback` where nothing is left. */
export const bareName = (path: string, fallback: string): string =>
  fileName(path)
    .replace(/\.[^.]*$/, '')
    .trim() || fallback;
