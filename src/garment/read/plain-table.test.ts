import { describe, expect, it } from 'vitest';
import { InputError } from '../index.ts';
import { readPlainRows, readPlainTable } from './plain-table.ts';

describe('a table as it stands on an envelope', () => {
  it('reads sizes, body measures and finished girths without further columns', () => {
    const chart = readPlainTable(
      'Size, S, M, L\nBust, 34, 36 1/2, 39\nWaist, 26 1/2, 29, 31 1/2\nFinished bust, 37, 39 1/2, 42\n',
      'in',
    );
    expect(chart.sizes.map((s) => s.label)).toEqual(['S', 'M', 'L']);
    // 1 in is 25.4 mm exactly (international yard and pound agreement, 1959).
    expect(chart.body['bust-girth']).toEqual([863.6, 927.1, 990.6]);
    expect(chart.finished['bust']).toEqual([939.8, 1003.3, 1066.8]);
  });

  it('takes tabs with decimal commas, and a unit that a row says itself', () => {
    const chart = readPlainTable('\t36\t38\nBust\t84,5\t88\nWaist (in)\t26\t28', 'cm');
    expect(chart.body['bust-girth']).toEqual([845, 880]);
    expect(chart.body['waist-girth']![0]).toBeCloseTo(26 * 25.4, 6);
  });

  it('takes a column of units, and names what is wrong where it was typed', () => {
    const chart = readPlainTable('Size,unit,8,10\nBust,in,34,36\nFinished bust,cm,94,100', 'cm');
    expect(chart.sizes.map((s) => s.label)).toEqual(['8', '10']);
    expect(chart.body['bust-girth']).toEqual([863.6, 914.4]);
    expect(chart.finished['bust']).toEqual([940, 1000]);
    expect(() => readPlainTable('Size,unit,8,10\nBust,ells,34,36')).toThrow('row 2, column 2 (unit): "ells"');
    expect(() => readPlainTable('Size,unit,8,10\nBust,in,34,many')).toThrow('row 2, column 4');
  });

  it('reads the full form as it is', () => {
    const chart = readPlainTable('measure,kind,unit,8,10\nhip-girth,body,cm,90,94', 'in');
    expect(chart.body['hip-girth']).toEqual([900, 940]);
  });

  it('names the row and column as they were typed', () => {
    try {
      readPlainTable('Size;8;10\nBust;80;eighty', 'cm');
      expect.unreachable('it took a word for a length');
    } catch (error) {
      expect(error).toBeInstanceOf(InputError);
      expect((error as InputError).where).toMatchObject({ row: 2, column: 3 });
    }
  });

  it('reads quoted cells, with the commas and inch marks in them', () => {
    const chart = readPlainTable('"Size","8, petite","10, tall"\nBust,"34,5","36 1/2"""\n', 'in');
    expect(chart.sizes.map((s) => s.label)).toEqual(['8, petite', '10, tall']);
    // 34.5 and 36.5 in.
    expect(chart.body['bust-girth']).toEqual([876.3, 927.1]);
  });

  it('asks for the unit where neither the row nor the person says it', () => {
    expect(() => readPlainTable('Size;8;10\nBust;80;84')).toThrow(
      'row 2, column 1 (unit): The unit is missing',
    );
    expect(readPlainTable('Size;8;10\nBust (cm);80;84').body['bust-girth']).toEqual([800, 840]);
  });

  it('reads a unit written with its full stop, beside the name, in its column and after the figure', () => {
    const bust = (text: string) => readPlainTable(text).body['bust-girth'];
    expect(bust('Size;8;10\nBust (cm.);80;84')).toEqual([800, 840]);
    expect(bust('Size;8;10\nBust, in.;34;36')).toEqual([863.6, 914.4]);
    expect(bust('Size;unit;8;10\nBust;in.;34;36')).toEqual([863.6, 914.4]);
    expect(bust('Size;unit;8;10\nBust;Ins.;34 ins.;36 in.')).toEqual([863.6, 914.4]);
    expect(() => bust('Size;unit;8;10\nBust;ells.;34;36')).toThrow('row 2, column 2 (unit)');
  });

  it('knows what envelopes call things: plurals, back length, bicep, sleeve length', () => {
    const chart = readPlainTable(
      'Size;8;10\nHips;90;94\nBack length;40;40,5\nBicep;28;29\nSleeve length;58;59\nThighs;52;54\nFinished hips;96;100\n',
      'cm',
    );
    expect(chart.body).toEqual({
      'hip-girth': [900, 940],
      'back-waist-length': [400, 405],
      'upper-arm-girth': [280, 290],
      'arm-length': [580, 590],
      'thigh-girth': [520, 540],
    });
    expect(chart.finished).toEqual({ hip: [960, 1000] });
  });

  it('takes the unit from the corner or after a name, also as an inch mark', () => {
    const bust = (text: string) => readPlainTable(text).body['bust-girth'];
    expect(bust('Size (in);8;10\nBust;34;36')).toEqual([863.6, 914.4]);
    expect(bust('Size in centimetres;8;10\nBust;80;84')).toEqual([800, 840]);
    expect(bust('Size;8;10\nBust in.;34;36')).toEqual([863.6, 914.4]);
    expect(bust('Size;8;10\nBust ";34;36')).toEqual([863.6, 914.4]);
  });

  it('takes cells parted by spaces, fractions and names of several words with them', () => {
    const chart = readPlainTable(
      'Size 8 10 12\nBust 34 36 1/2 38½\nBack waist length 16 16 1/4 16 1/2\n',
      'in',
    );
    expect(chart.sizes.map((s) => s.label)).toEqual(['8', '10', '12']);
    expect(chart.body['bust-girth']).toEqual([863.6, 927.1, 977.9]);
    expect(chart.body['back-waist-length']).toEqual([406.4, 412.75, 419.1]);
    const wide = readPlainTable('Sizes (cm)   XS   S   M\nFinished bust   88   92,5   -\n');
    expect(wide.sizes.map((s) => s.label)).toEqual(['XS', 'S', 'M']);
    expect(wide.finished['bust']).toEqual([880, 925, null]);
  });

  it('keeps the rows that it understands and names each of the others', () => {
    const { chart, wrong } = readPlainRows(
      'Size;8;10\nBust;80;84\nElbow room;3;4\nWaist;64;lots\nHip;90;94',
      'cm',
    );
    expect(chart.body).toEqual({ 'bust-girth': [800, 840], 'hip-girth': [900, 940] });
    expect(wrong?.problems.map((one) => [one.where.row, one.where.column])).toEqual([
      [3, 1],
      [4, 3],
    ]);
    expect(() => readPlainRows('Size;8;10\nElbow room;3;4', 'cm')).toThrow('Elbow room');
  });
});
