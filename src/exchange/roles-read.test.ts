// Promised: at least 95 % of the edges' roles are right by themselves, and on drawings unlike our own no wrong one is above 0.8 sure.
// Truth: fixtures/role-drawings, whose drafter wrote the roles down beside each drawing; our samples' own roles, taken out of what is read.
import { describe, expect, it } from 'vitest';
import type { Pattern } from '../garment/index.ts';
import { nearestPlace, pathAt } from '../geometry/index.ts';
import { SAMPLES, sample } from '../samples/index.ts';
import type { Proposal } from './find/proposal.ts';
import { recognise } from './find/recognise.ts';
import { readFile } from './read-file.ts';
import { NAMES, renamed } from './renamed.test-case.ts';
import { ROLE_DRAWINGS, matchDrawing, readRoleDrawing } from './role-drawings.test-case.ts';
import type { MatchedPiece } from './role-drawings.test-case.ts';
import { tiledPdf } from './tiled.test-case.ts';
import { writeDxf } from './write/dxf.ts';
import { writePatternPdf } from './write/pdf.ts';
import { patternSheet } from './write/sheet.ts';

/** Above this nobody is asked. */
const SURE = 0.8;

interface Score {
  readonly edges: number;
  readonly right: number;
  /** Wrong ones in words, with how sure they were. */
  readonly wrong: readonly { readonly words: string; readonly confidence: number }[];
}

function drawingScore(name: string, matched: readonly MatchedPiece[]): Score {
  const all = matched.flatMap((piece) => piece.edges.map((edge) => ({ piece, ...edge })));
  const wrong = all.flatMap(({ piece, known, found }) => {
    const read = [found?.role, found?.also].filter((role) => role !== undefined);
    const right =
      read.some((role) => role === known.role || known.also?.includes(role)) &&
      (!known.half || !found?.half || known.half === found.half);
    if (right) return [];
    const words = `${name}: ${piece.known.words[0] ?? '?'}.${known.role} ${known.half ?? ''} read as ${found?.role ?? 'nothing'} ${found?.half ?? ''}`;
    return [{ words, confidence: found?.confidence ?? 0 }];
  });
  return { edges: all.length, right: all.length - wrong.length, wrong };
}

/** Edges that are one line in a drawing are one edge: each true edge is held against the piece of that outline, and the edge as long as it or longer. */
function sampleScore(pattern: Pattern, proposal: Proposal): Score {
  const k = Math.floor(pattern.chart.sizes.length / 2);
  const wrong: { words: string; confidence: number }[] = [];
  let edges = 0;
  for (const [i, piece] of pattern.pieces.entries()) {
    const found = proposal.pieces.find((one) => one.name === piece.name) ?? proposal.pieces[i]!;
    const corner = (paths: readonly (readonly { x: number; y: number }[])[]) => {
      const all = paths.flat();
      return { x: Math.min(...all.map((p) => p.x)), y: Math.min(...all.map((p) => p.y)) };
    };
    const from = corner(piece.edges.map((edge) => edge.path[k]!));
    const to = corner(found.edges.map((edge) => edge.paths[k]!));
    for (const edge of piece.edges) {
      if (edge.kind === 'dart') continue;
      edges++;
      const middle = pathAt(edge.path[k]!, 0.5);
      const at = { x: middle.x - from.x + to.x, y: middle.y - from.y + to.y };
      const near = found.edges
        .map((one) => ({ one, far: nearestPlace(one.paths[k]!, at).distance }))
        .reduce((a, b) => (b.far < a.far ? b : a)).one;
      if (near.role === edge.role || (near.also !== undefined && near.also === edge.role)) continue;
      if (edge.also !== undefined && near.role === edge.also) continue;
      wrong.push({
        words: `${piece.id}.${edge.id} (${edge.role ?? 'none'}) read as ${near.role ?? 'nothing'}`,
        confidence: near.confidence ?? 0,
      });
    }
  }
  return { edges, right: edges - wrong.length, wrong };
}

/** How each reading of a sample comes about. */
const WAYS: Readonly<Record<string, (pattern: Pattern) => Proposal | Promise<Proposal>>> = {
  DXF: (pattern) => readFile(new TextEncoder().encode(writeDxf(pattern, '2026-01-01')), 'a.dxf'),
  'PDF, one sheet': async (pattern) => readFile(await writePatternPdf(pattern, '2026-01-01'), 'a.pdf'),
  'PDF, tiled': async (pattern) => readFile((await tiledPdf(pattern, 10, 1100)).bytes, 'a.pdf'),
  'lines, in German': (pattern) => recognise(patternSheet(pattern, { semantics: false }).drawing),
  'lines, in Dutch': (pattern) => recognise(patternSheet(pattern, { semantics: false }).drawing),
};
const BLANK = 'lines, no words';

const told = (wrong: Score['wrong']): string =>
  wrong.map((one) => `${one.words} (${one.confidence})`).join('\n');

const say = (name: string, scores: readonly Score[]): void => {
  if (!process.env['PINTRUE_SAY']) return;
  const sum = (of: (score: Score) => number) => scores.reduce((s, score) => s + of(score), 0);
  const wrong = scores.flatMap((score) => score.wrong);
  process.stdout.write(
    `${name}: ${sum((s) => s.right)} of ${sum((s) => s.edges)}, ${wrong.filter((one) => one.confidence > SURE).length} wrong and sure\n${told(wrong)}\n`,
  );
};

describe('roles of drawings unlike ours', () => {
  it('are right for 95 % of the edges, and none that is wrong is sure', async () => {
    const scores: Score[] = [];
    for (const name of ROLE_DRAWINGS) {
      const score = drawingScore(name, matchDrawing(await readRoleDrawing(name)));
      say(name, [score]);
      scores.push(score);
    }
    const wrong = scores.flatMap((one) => one.wrong);
    const edges = scores.reduce((sum, one) => sum + one.edges, 0);
    expect(1 - wrong.length / edges, told(wrong)).toBeGreaterThanOrEqual(0.95);
    expect(
      wrong.filter((one) => one.confidence > SURE),
      told(wrong),
    ).toEqual([]);
  });
});

describe('roles of our samples, read back', () => {
  it.each(Object.keys(WAYS))('%s: right for 95 % of the edges with nobody answering', async (way) => {
    const scores: Score[] = [];
    for (const { id } of SAMPLES) {
      const own = sample(id);
      const pattern = way.endsWith('German')
        ? renamed(own, NAMES.de)
        : way.endsWith('Dutch')
          ? renamed(own, NAMES.nl)
          : own;
      scores.push(sampleScore(pattern, await WAYS[way]!(pattern)));
    }
    say(way, scores);
    const wrong = scores.flatMap((one) => one.wrong);
    const edges = scores.reduce((sum, one) => sum + one.edges, 0);
    expect(1 - wrong.length / edges, told(wrong)).toBeGreaterThanOrEqual(0.95);
  });

  it('without a word on them: nine of ten, by shape and company alone', () => {
    const scores = SAMPLES.map(({ id }) => {
      const { drawing } = patternSheet(sample(id), { semantics: false });
      return sampleScore(sample(id), recognise({ ...drawing, texts: [] }));
    });
    say(BLANK, scores);
    const wrong = scores.flatMap((one) => one.wrong);
    const edges = scores.reduce((sum, one) => sum + one.edges, 0);
    expect(1 - wrong.length / edges, told(wrong)).toBeGreaterThanOrEqual(0.9);
  });
});
