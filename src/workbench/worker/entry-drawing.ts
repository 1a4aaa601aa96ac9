import { alterationOf, drawingOf, drawingRow, type DrawingRow } from '../../alter/index.ts';

/** The small drawing of a catalogue entry; empty where there is no such entry. Loaded when the first is looked at: no plan needs the plain garments it is drawn on. */
export function entryDrawing(id: string): DrawingRow {
  const entry = alterationOf(id);
  return drawingRow(entry ? drawingOf(entry) : []);
}
