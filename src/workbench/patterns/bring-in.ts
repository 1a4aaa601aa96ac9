/** Reads a drawing (PDF, SVG, DXF) into a pattern. */
export async function bringIn(file: File): Promise<string | null> {
  throw new Error(`reading ${file.name} is not there yet`);
}
