import type { Point } from '../../../geometry/index.ts';

/** One line of a plain drawing and the layer it belongs to. mm. */
export interface DxfStroke {
  readonly layer: string;
  readonly points: readonly Point[];
  readonly closed: boolean;
}

const fixed = (v: number): string => (Math.abs(v) < 5e-7 ? 0 : v).toFixed(6);

/**
 * A plain drawing as DXF in its R12 form: one POLYLINE a stroke, layers by name, lengths in mm ($INSUNITS 4). No pattern rules: for a plotter or a
 * cutter that follows lines by layer. Deterministic.
 */
export function writeDxfStrokes(strokes: readonly DxfStroke[]): string {
  const lines: string[] = [];
  const out = (code: number, value: string | number): void => {
    lines.push(String(code).padStart(3), typeof value === 'number' ? fixed(value) : value);
  };
  const at = (p: Point): void => {
    out(10, p.x);
    out(20, p.y);
    out(30, 0);
  };
  const layers = [...new Set(strokes.map((s) => s.layer))];
  const begin = (name: string): void => {
    out(0, 'SECTION');
    out(2, name);
  };
  begin('HEADER');
  out(9, '$ACADVER');
  out(1, 'AC1009');
  out(9, '$INSUNITS');
  out(70, '4');
  out(0, 'ENDSEC');
  begin('TABLES');
  out(0, 'TABLE');
  out(2, 'LAYER');
  out(70, String(layers.length));
  layers.forEach((layer, i) => {
    out(0, 'LAYER');
    out(2, layer);
    out(70, '0');
    // Colour numbers 1 … 7 are the standard's own named ones.
    out(62, String((i % 7) + 1));
    out(6, 'CONTINUOUS');
  });
  out(0, 'ENDTAB');
  out(0, 'ENDSEC');
  begin('ENTITIES');
  for (const { layer, points, closed } of strokes) {
    out(0, 'POLYLINE');
    out(8, layer);
    out(66, '1');
    at({ x: 0, y: 0 });
    out(70, closed ? '1' : '0');
    for (const p of points) {
      out(0, 'VERTEX');
      out(8, layer);
      at(p);
    }
    out(0, 'SEQEND');
    out(8, layer);
  }
  out(0, 'ENDSEC');
  out(0, 'EOF');
  return lines.join('\r\n') + '\r\n';
}
