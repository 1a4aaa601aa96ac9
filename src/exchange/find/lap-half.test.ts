// The naming of halves is the reader's own.
import { expect, it } from 'vitest';
import { edgeNow, lapHalf, saidNow, sewnHalf, wholeEdge } from './lap-half.ts';

const edge = (id: string) => ({ id });
const whole = [edge('edge-1'), edge('edge-3')];
const cut = [edge('edge-1'), edge(lapHalf('edge-3')), edge(sewnHalf('edge-3'))];

it('an edge spoken of whole is its sewn half once it is cut, and the other way about', () => {
  expect(edgeNow(cut, 'edge-3')).toBe(sewnHalf('edge-3'));
  expect(edgeNow(whole, sewnHalf('edge-3'))).toBe('edge-3');
  expect(edgeNow(cut, 'edge-1')).toBe('edge-1');
  expect(wholeEdge(sewnHalf('edge-3'))).toBe('edge-3');
  expect(wholeEdge('edge-3')).toBe('edge-3');
});

it('the underlap is nothing while there is none', () => {
  expect(edgeNow(whole, lapHalf('edge-3'))).toBeUndefined();
  expect(saidNow(whole, { [lapHalf('edge-3')]: 'free' })).toEqual({});
});

it('what was said of the edge as it stands goes before what was said of it otherwise', () => {
  const both = { 'edge-3': 'whole', [sewnHalf('edge-3')]: 'half' };
  expect(saidNow(whole, both)).toEqual({ 'edge-3': 'whole' });
  expect(saidNow(cut, both)).toEqual({ [sewnHalf('edge-3')]: 'half' });
  expect(saidNow(cut, { 'edge-3': 'whole', 'edge-1': 'other' })).toEqual({
    'edge-1': 'other',
    [sewnHalf('edge-3')]: 'whole',
  });
});
