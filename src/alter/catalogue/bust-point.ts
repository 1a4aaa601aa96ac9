import { t, len, listOf, edgesOf, hasEdge } from '../../garment/index.ts';
import { pathAt, pathEnd, pathStart, sub, unit } from '../../geometry/index.ts';
import type { DrawnPiece } from '../../garment/index.ts';
import type { Alteration } from '../entry/alteration.ts';
import { panelFronts } from '../ways/bust-fronts.ts';
import { draw } from '../follow/change.ts';
import { dartOf } from '../dart/dart.ts';
import { bustDarts, bustPoint } from '../ways/full-bust.ts';
import { levelShare } from '../role/height.ts';
import { inch, lengthParam } from '../entry/param.ts';
import { pullEdges } from '../move/pull.ts';
import type { Pull } from '../move/pull.ts';
import { Refusal } from '../words/refusal.ts';
import { needPanels } from '../role/roles.ts';

/**
 * The dart box moved: a dart in the side seam goes up or down along that seam with its point; a dart from below keeps its mouth's height and goes sideways,
 * its point both ways (trade.md 5.10, bust-point height and spread).
 */
function moveDart(piece: DrawnPiece, id: string, up: number, out: number): Pull[] {
  const d = dartOf(piece, id);
  const n = piece.edges.length;
  const before = piece.edges[(d.first + n - 1) % n]!;
  const along = unit(sub(pathEnd(before.path), pathAt(before.path, 0.9)));
  const upright = Math.abs(along.y) > Math.abs(along.x);
  const mouth = upright
    ? { x: (along.x * up) / Math.abs(along.y), y: up }
    : { x: out, y: (along.y * out) / Math.abs(along.x) };
  return [
    { edge: d.dart.legs[0], at: 0, by: mouth },
    { edge: d.dart.legs[1], at: 0, by: { x: out, y: up } },
    { edge: d.dart.legs[1], at: 1, by: mouth },
  ];
}

/** The easing between two still places is 1.5 times as steep in its middle as on the whole: more than this share of a run would fold the line back. */
const ROOM = 0.6;

/**
 * A panel edge whose fullest place (where it crosses the bust line) goes up, down or sideways, running out at the armhole above and at the next level
 * below. Both edges of the panel seam take the same pull, so they stay as long as one another and no width changes across the seam.
 */
function movePanelBust(piece: DrawnPiece, up: number, out: number): Pull[] {
  return edgesOf(piece, 'panel').flatMap((edge): Pull[] => {
    const at = levelShare(piece, edge, 'bust');
    if (at === undefined)
      throw new Refusal(
        'no-level',
        { on: { piece: piece.name }, level: 'bust' },
        { piece: piece.id, level: 'bust' },
      );
    const full = pathAt(edge.path, at).y;
    const waist = levelShare(piece, edge, 'waist');
    const ends = [pathStart(edge.path).y, pathEnd(edge.path).y];
    const stills = [...ends, ...(waist === undefined ? [] : [pathAt(edge.path, waist).y])];
    const room = Math.min(
      ...stills.filter((y) => (up > 0 ? y > full : y < full)).map((y) => Math.abs(y - full)),
    );
    if (Math.abs(up) > room * ROOM)
      throw new Refusal('no-room', { piece: piece.name, room, up }, { piece: piece.id, edge: edge.id });
    return [
      { edge: edge.id, at, by: { x: out, y: up }, smooth: true },
      ...(waist === undefined ? [] : [{ edge: edge.id, at: waist, by: { x: 0, y: 0 }, smooth: true }]),
    ];
  });
}

export const bustPointMoved: Alteration = {
  id: 'bust-point',
  group: 'bust',
  name: t`Bust point raised, lowered or moved`,
  when: t`The darts, or the curve of the panel seams, are fullest above, below or beside the fullest place of the bust.`,
  source: 'docs/trade.md 5.10 (bust-point height and apex spread; memory)',
  params: [
    lengthParam('up', t`higher`, {
      default: inch(-0.5),
      min: -60,
      max: 60,
      limit: {
        most: inch(1.5),
        say: t`Compare front waist length and size first.`,
        source: 'common practice',
      },
    }),
    lengthParam('out', t`further from the centre`, {
      default: 0,
      min: -30,
      max: 30,
      limit: { most: inch(0.75), say: t`Compare the size first.`, source: 'common practice' },
    }),
  ],
  reach: [
    t`bust darts with their mouths, or both edges of the panel seam alike`,
    t`front lining`,
    t`bust point`,
  ],
  shows: { on: 'bodice', params: { up: -20, out: 8 } },
  make(change, values) {
    const up = values.mm('up');
    const out = values.mm('out');
    const fronts = needPanels(change.garment, 'front').filter(
      (p) => p.marks.some((m) => m.kind === 'bust-point') || p.darts.some((d) => d.serves === 'bust'),
    );
    if (fronts.length === 0) throw new Refusal('no-bust-point', { piece: null });
    for (const front of fronts) {
      draw(change, front.id, (piece) => {
        const bust = bustPoint(piece);
        const pulls = bustDarts(piece, bust).flatMap((id) => moveDart(piece, id, up, out));
        const moved = pullEdges(piece, pulls);
        return {
          ...moved,
          marks: moved.marks.map((m) =>
            m.kind === 'bust-point' ? { ...m, at: { x: m.at.x + out, y: m.at.y + up } } : m,
          ),
        };
      });
    }
    if (!fronts.some((front) => hasEdge(front, 'panel') && front.darts.length === 0)) return;
    for (const { centre, side } of panelFronts(change.garment)) {
      for (const { id } of [centre, side]) draw(change, id, (p) => pullEdges(p, movePanelBust(p, up, out)));
    }
  },
  sentence(values) {
    const up = values.mm('up');
    const out = values.mm('out');
    const parts = [
      ...(up === 0 ? [] : [t`${up < 0 ? t`lowered` : t`raised`} by ${len(Math.abs(up))}`]),
      ...(out === 0
        ? []
        : [t`moved ${len(Math.abs(out))} ${out < 0 ? t`towards` : t`away from`} the centre`]),
    ];
    return t`Bust point and the darts or panel seams that serve it: ${parts.length > 0 ? listOf(parts) : t`unchanged`}`;
  },
};
