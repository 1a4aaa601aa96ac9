import { levelName, measureName, type Finding } from '../../garment/index.ts';
import type { ReadyBench } from '../station/bench.ts';
import { hrefTo } from '../station/route.ts';

/** Where a finding is, in words and as an address. */
export function whereOf(finding: Finding, bench: ReadyBench): { words: string; href: string | null } {
  const { where } = finding;
  const { fitting, made } = bench;
  const piece = made.garment.pieces.find((p) => p.id === where.piece);
  const edge = piece?.edges.find((e) => e.id === where.edge);
  const seam = made.garment.seams.find((s) => s.id === where.seam);
  const step = where.step ? fitting.steps.findIndex((s) => s.id === where.step) : -1;
  const words = [
    piece && `${piece.number} ${piece.name}`,
    edge?.name,
    seam && `seam: ${seam.name}`,
    where.level && levelName(where.level, fitting.body.wearer),
    where.measure && measureName(where.measure, fitting.body.wearer),
    step >= 0 && `step ${step + 1}`,
  ].filter(Boolean);
  const ask: Record<string, string> = {
    ...(piece ? { piece: piece.id } : {}),
    ...(edge ? { edge: edge.id } : {}),
    ...(seam ? { seam: seam.id } : {}),
    ...(step >= 0 && !seam ? { step: where.step! } : {}),
  };
  const href =
    Object.keys(ask).length > 0
      ? hrefTo('pieces', fitting.id, ask)
      : made.plan.levels.some((l) => l.level === where.level) && where.level
        ? hrefTo('fit', fitting.id, { level: where.level })
        : made.plan.lengths.some((l) => l.measure === where.measure)
          ? hrefTo('fit', fitting.id, { measure: where.measure! })
          : null;
  return { words: [...new Set(words)].join(' · '), href };
}
