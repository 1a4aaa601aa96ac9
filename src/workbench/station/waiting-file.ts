let waiting: File | null = null;

/** Hands a chosen file to the page that reads it. */
export function leaveFile(file: File): void {
  waiting = file;
}

/** The file that was left; it stays until another one is. */
export const takeFile = (): File | null => waiting;
