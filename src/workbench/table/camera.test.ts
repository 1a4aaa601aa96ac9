import { describe, expect, it } from 'vitest';
import { pan, showBox, toScreen, toTable, zoom } from './camera.ts';

const camera = { x: -120, y: 340, k: 0.8 };

describe('the view over the table', () => {
  it('takes a point there and back', () => {
    const p = { x: 57.25, y: -310.5 };
    const back = toTable(camera, toScreen(camera, p));
    expect(back.x).toBeWithinMm(p.x, 1e-9);
    expect(back.y).toBeWithinMm(p.y, 1e-9);
  });

  it('keeps the point under the finger while zooming', () => {
    const finger = { x: 240, y: 130 };
    const under = toTable(camera, finger);
    const nearer = zoom(camera, 1.7, finger);
    expect(nearer.k).toBeCloseTo(0.8 * 1.7, 12);
    expect(toScreen(nearer, under).x).toBeCloseTo(finger.x, 9);
    expect(toScreen(nearer, under).y).toBeCloseTo(finger.y, 9);
  });

  it('moves the table with the hand', () => {
    const p = { x: 10, y: 20 };
    const moved = pan(camera, 15, -9);
    expect(toScreen(moved, p).x - toScreen(camera, p).x).toBeCloseTo(15, 9);
    expect(toScreen(moved, p).y - toScreen(camera, p).y).toBeCloseTo(-9, 9);
  });

  it('shows all of a box in the middle', () => {
    const seen = showBox({ minX: 0, minY: -500, maxX: 1000, maxY: 0 }, { width: 800, height: 600 });
    const a = toScreen(seen, { x: 0, y: 0 });
    const b = toScreen(seen, { x: 1000, y: -500 });
    expect(a.x).toBeCloseTo(800 - b.x, 6);
    expect(a.y).toBeCloseTo(600 - b.y, 6);
    expect(a.x).toBeGreaterThan(0);
    expect(b.x - a.x).toBeCloseTo(768, 6);
  });
});
