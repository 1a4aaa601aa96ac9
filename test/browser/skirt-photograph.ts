import type { Page } from 'playwright-core';

/** A quarter skirt in two sizes: corners in mm from the lower left corner of an A4 sheet that lies at its left. The camera is the browser's own CSS perspective. */
const WIDE = 210;
const HIGH = 297;
export const INNER = [
  [250, 20],
  [450, 20],
  [420, 270],
  [250, 270],
] as const;
export const OUTER = [
  [242, 12],
  [460, 12],
  [430, 278],
  [242, 278],
] as const;

/** The two sizes on a dark table beside a white sheet, as a camera held askew sees them. */
export async function photograph(page: Page): Promise<Buffer> {
  await page.setViewportSize({ width: 1600, height: 1200 });
  const d = (ring: readonly (readonly [number, number])[]): string =>
    `M${ring.map(([x, y]) => `${x} ${HIGH - y}`).join('L')}Z`;
  await page.setContent(`<!doctype html><body style="margin:0;background:#3a332c;overflow:hidden">
    <div style="position:absolute;left:150px;top:170px;width:1300px;height:860px;transform:perspective(2600px) rotateX(14deg) rotateY(-7deg) rotateZ(2deg)">
    <svg viewBox="-5 -5 500 330" width="1300" height="858" style="overflow:visible">
      <rect x="0" y="0" width="${WIDE}" height="${HIGH}" fill="#fff"/>
      <rect x="230" y="-2" width="245" height="300" fill="#cfc8bb"/>
      <path d="${d(INNER)}" fill="none" stroke="#111" stroke-width="1"/>
      <path d="${d(OUTER)}" fill="none" stroke="#111" stroke-width="1"/>
    </svg></div></body>`);
  return page.screenshot({ type: 'png' });
}
