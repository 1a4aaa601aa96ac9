/** A DXF without the words of D6673 and with all that is read of one: line types, a bulge, a spline, an ellipse, blocks within blocks, words. mm. */
export function plainDxf(): Uint8Array {
  const entity = (kind: string, ...pairs: readonly (readonly [number, string | number])[]): string =>
    [[0, kind] as const, ...pairs].map(([code, value]) => `${code}\n${value}`).join('\n');
  const section = (name: string, ...parts: readonly string[]): string =>
    [entity('SECTION', [2, name]), ...parts, entity('ENDSEC')].join('\n');
  const knots = [0, 0, 0, 0, 1, 1, 1, 1].map((knot) => [40, knot] as const);
  const controls = [
    [300, 100],
    [300, 250],
    [150, 300],
    [0, 300],
  ].flatMap(([x, y]) => [[10, x!] as const, [20, y!] as const]);
  const text = [
    section('HEADER', '9\n$INSUNITS\n70\n4'),
    section(
      'TABLES',
      entity('LAYER', [2, 'Size 36'], [62, 1], [6, 'DASHED']),
      entity('LTYPE', [2, 'DASHED'], [49, 6], [49, -2]),
    ),
    section(
      'BLOCKS',
      entity('BLOCK', [2, 'ROUND'], [10, 0], [20, 0]),
      entity('ELLIPSE', [8, '0'], [10, 0], [20, 0], [11, 60], [21, 0], [40, 0.5], [41, 0], [42, 2 * Math.PI]),
      entity('ENDBLK'),
      entity('BLOCK', [2, 'TWO'], [10, 5], [20, 5]),
      entity('INSERT', [8, '0'], [2, 'ROUND'], [10, 5], [20, 5], [41, 1.5], [42, 1.5], [50, 30]),
      entity('ENDBLK'),
    ),
    section(
      'ENTITIES',
      entity('SPLINE', [8, 'Size 36'], [70, 8], [71, 3], ...knots, ...controls),
      entity(
        'LWPOLYLINE',
        [8, 'Size 36'],
        [70, 0],
        ...[
          [0, 300],
          [0, 0],
          [300, 0],
          [300, 100],
        ].flatMap(([x, y]) => [[10, x!] as const, [20, y!] as const, [42, 0.1] as const]),
      ),
      entity('INSERT', [8, 'Size 36'], [2, 'TWO'], [10, 600], [20, 100]),
      entity('TEXT', [8, 'Words'], [10, 100], [20, 100], [40, 8], [1, 'Front']),
    ),
    entity('EOF'),
  ].join('\n');
  return new TextEncoder().encode(`${text}\n`);
}
