import { describe, expect, it } from 'vitest';
import { InputError, parseChartCsv, parseMeasuresCsv } from '../index.ts';

function fault(run: () => unknown): InputError {
  try {
    run();
  } catch (error) {
    if (error instanceof InputError) return error;
    throw error;
  }
  throw new Error('nothing was wrong');
}

describe('measurements typed as a table', () => {
  it('reads the plain form', () => {
    const { readings, questions } = parseMeasuresCsv(
      'measure,value,unit\nbust-girth,40 1/2,in\nwaist-girth,"81,3",cm\n',
    );
    expect(readings['bust-girth']).toEqual([{ value: 1028.7, typed: '40 1/2 in' }]);
    expect(readings['waist-girth']?.[0]?.value).toBe(813);
    expect(questions).toEqual([]);
  });

  it('reads semicolons with decimal commas, a byte-order mark and Windows line ends', () => {
    const { readings } = parseMeasuresCsv(
      '\ufeffmeasure;value;unit\r\nbust-girth;102,9;cm\r\n\r\nhip-girth;110;cm\r\n',
    );
    expect(readings['bust-girth']?.[0]?.value).toBe(1029);
    expect(readings['hip-girth']?.[0]?.value).toBe(1100);
  });

  it('reads tabs pasted from a spreadsheet, and units written with the value', () => {
    const { readings } = parseMeasuresCsv('Measure\tValue\tUnit\nBust\t40.5"\t\nHip\t110 cm');
    expect(readings['bust-girth']?.[0]?.value).toBeCloseTo(1028.7, 6);
    expect(readings['hip-girth']?.[0]?.value).toBe(1100);
  });

  it('reads a column that says on which side', () => {
    const { readings } = parseMeasuresCsv(
      'measure,value,unit,side\nshoulder-slope,18,,left\nshoulder-slope,26,,Right\nbust-girth,40,in,\n',
    );
    expect(readings['shoulder-slope']).toEqual([
      { value: 18, typed: '18', side: 'left' },
      { value: 26, typed: '26', side: 'right' },
    ]);
    expect(readings['bust-girth']?.[0]).not.toHaveProperty('side');
    const error = fault(() => parseMeasuresCsv('measure,value,unit,side\nbust-girth,40,in,centre\n'));
    expect(error.code).toBe('side');
    expect(error.where).toMatchObject({ row: 2, column: 4 });
  });

  it('takes a repeated row as a repeat reading', () => {
    expect(
      parseMeasuresCsv('measure,value,unit\nbust-girth,40,in\nbust-girth,40 1/4,in').readings['bust-girth'],
    ).toHaveLength(2);
  });

  it('asks about a bust of 40 cm and keeps it as typed', () => {
    const { readings, questions } = parseMeasuresCsv('measure,value,unit\nbust-girth,40,cm');
    expect(readings['bust-girth']?.[0]?.value).toBe(400);
    expect(questions.map((q) => q.code)).toEqual(['unit-doubtful']);
  });

  it.each([
    ['measure,value\nbust-girth,40', 'header', 1, 3],
    ['measure,value,unit\nbust-girth,forty,in', 'not-a-number', 2, 2],
    ['measure,value,unit\n\nbust-girth,40 1/7,in', 'odd-fraction', 3, 2],
    ['measure,value,unit\nbust-grith,40,in', 'unknown-measure', 2, 1],
    ['measure,value,unit\nbust-girth,40,furlong', 'unit', 2, 3],
    ['measure,value,unit\nbust-girth,,in', 'empty', 2, 2],
    ['measure,value,unit\nbust-girth,102,9,cm', 'too-many-cells', 2, 4],
    ['measure,value,unit\nbust-girth,"40,in', 'open-quote', 2, 2],
    ['measure,value,unit\nbust-girth,"40"x,in', 'text-after-quote', 2, 2],
    ['measure,value,unit\nbust-girth,-40,in', 'negative', 2, 2],
    ['measure,value,unit\nshoulder-slope,24 cm,', 'not-degrees', 2, 2],
    ['measure;value;unit\nbust-girth;1,029;mm', 'thousands-or-decimal', 2, 2],
    ['measure,value,unit', 'empty', 2, 1],
    ['', 'empty', 1, 1],
  ])('%j is told: %s at row %d, column %d', (text, code, row, column) => {
    const error = fault(() => parseMeasuresCsv(text));
    expect(error.code).toBe(code);
    expect(error.where).toMatchObject({ row, column });
    expect(error.message).toContain(`row ${row}, column ${column}`);
  });

  it('tells everything that is wrong at once, with the file', () => {
    const error = fault(() =>
      parseMeasuresCsv('measure,value,unit\nbust-grith,40,in\nhip-girth,x1,in'),
    ).inFile('ada.csv');
    expect(error.problems).toHaveLength(2);
    expect(error.message).toContain(
      'ada.csv, row 2, column 1 (measure): "bust-grith" is not a measure known here; did you mean bust-girth?',
    );
  });
});

describe('a size chart typed as a table', () => {
  const head = 'measure,kind,unit,12,14,16\n';

  it('reads body rows, finished rows by girth or level, and finished lengths', () => {
    const chart = parseChartCsv(
      `${head}bust-girth,body,in,34,36,38\nbust-girth,finished,in,37,39,41\nhip,finished,in,38,40,\nback-waist-length,body,in,16.25,16.5,16.75\nback-waist-length,finished,in,16.5,16.75,17\n`,
    );
    expect(chart.sizes.map((s) => s.id)).toEqual(['12', '14', '16']);
    expect(chart.body['bust-girth']).toEqual([863.6, 914.4, 965.2]);
    expect(chart.finished['bust']).toEqual([939.8, 990.6, 1041.4]);
    expect(chart.finished['hip']).toEqual([965.2, 1016, null]);
    expect(chart.finishedLengths['back-waist-length']?.[0]).toBeCloseTo(419.1, 6);
    expect(chart.waist).toBe('unsaid');
  });

  it.each([
    ['measure,kind,unit\nbust-girth,body,in', 'no-sizes', 1, 4],
    ['measure,kind,unit,12,12\nbust-girth,body,in,34,36', 'size-twice', 1, 5],
    [`${head}bust-girth,bdy,in,34,36,38`, 'kind', 2, 2],
    [`${head}bust-girth,body,in,34,x6,38`, 'not-a-number', 2, 5],
    [`${head}bust-girth,body,in,38,36,34`, 'sizes-fall', 2, 5],
    [`${head}bust-girth,body,in,34,36,38,40`, 'too-many-cells', 2, 7],
    [`${head}bust-girth,body,in,34,36,38\nbust,body,in,34,36,38`, 'row-twice', 3, 1],
    [`${head}bust-girth,body,in,-,-,`, 'empty', 2, 1],
    [`${head}chest-hair,finished,in,1,2,3`, 'unknown-measure', 2, 1],
    [`${head}bust-girth,body,,34,36,38`, 'unit', 2, 3],
    [`${head}`, 'empty', 2, 1],
  ])('%j is told: %s at row %d, column %d', (text, code, row, column) => {
    const error = fault(() => parseChartCsv(text));
    expect(error.code).toBe(code);
    expect(error.where).toMatchObject({ row, column });
  });
});
