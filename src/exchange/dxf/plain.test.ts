import { expect, it } from 'vitest';
import { readDxf } from './drawing.ts';

const pair = (code: number, value: string | number): string => `${code}\n${value}\n`;
const section = (name: string, body: string): string =>
  pair(0, 'SECTION') + pair(2, name) + body + pair(0, 'ENDSEC');
const insert = (block: string): string => pair(0, 'INSERT') + pair(8, 0) + pair(2, block);

it('a file of blocks that hold nothing but one another many times over is refused', () => {
  const block = (k: number): string =>
    pair(0, 'BLOCK') + pair(2, `b${k}`) + insert(`b${k + 1}`).repeat(40) + pair(0, 'ENDBLK');
  const file =
    section('BLOCKS', Array.from({ length: 9 }, (_, k) => block(k)).join('')) +
    section('ENTITIES', insert('b0')) +
    pair(0, 'EOF');
  expect(() => readDxf(new TextEncoder().encode(file), 'bomb.dxf')).toThrow('blocks hold too many points');
});
