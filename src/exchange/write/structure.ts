import { pathMove } from '../../geometry/index.ts';
import type { Path } from '../../geometry/index.ts';
import { readPattern, t, type Phrase, called } from '../../garment/index.ts';
import type { Pattern } from '../../garment/index.ts';
import type { Drawing } from '../drawing/drawing.ts';
import type { Placement } from './sheet.ts';

/** Everything of a pattern but its lines: those stay in the drawing, where an editor may improve them. */
export interface Structure {
  readonly format: 'pintrue-structure';
  readonly version: 1;
  readonly placement: Placement;
  /** The pattern with every edge's paths taken out. */
  readonly pattern: unknown;
}

/** The structure to travel beside the lines. Inner lines and marks are small and travel whole. */
export function structureOf(pattern: Pattern, placement: Placement): Structure {
  return {
    format: 'pintrue-structure',
    version: 1,
    placement,
    pattern: {
      ...pattern,
      pieces: pattern.pieces.map((piece) => ({
        ...piece,
        edges: piece.edges.map((edge) => ({ ...edge, path: null })),
      })),
    },
  };
}

/**
 * Puts the pattern together again from its structure and the lines of the drawing. Gives null and says why when the drawing no longer
 * holds every edge in every size, or the structure is not one of ours.
 */
export function wholePattern(drawing: Drawing): { pattern: Pattern | null; why: Phrase | null } {
  if (drawing.structure === undefined) return { pattern: null, why: null };
  const structure = drawing.structure as Partial<Structure> | null;
  const source = structure?.pattern as
    | {
        chart?: { sizes?: { id: string }[] };
        pieces?: { id: string; edges: { id: string; path: unknown }[] }[];
      }
    | undefined;
  if (
    structure?.format !== 'pintrue-structure' ||
    structure.version !== 1 ||
    !Array.isArray(source?.pieces) ||
    !Array.isArray(source.chart?.sizes)
  ) {
    return {
      pattern: null,
      why: t`The file carries a pattern’s structure, but not one this version can read.`,
    };
  }
  const paths = new Map<string, Path>();
  for (const { belongs, path } of drawing.strokes) {
    if (belongs?.part?.startsWith('edge:'))
      paths.set(`${belongs.piece} ${belongs.size} ${belongs.part.slice(5)}`, path);
  }
  try {
    const pieces = source.pieces.map((piece) => {
      const at = structure.placement?.[piece.id];
      return {
        ...piece,
        edges: piece.edges.map((edge) => ({
          ...edge,
          path: source.chart!.sizes!.map((size) => {
            const path = paths.get(`${piece.id} ${size.id} ${edge.id}`);
            if (!path || !at) throw new RangeError(`edge ${edge.id} of ${piece.id} in size ${size.id}`);
            return pathMove(path, { angle: 0, dx: -at.x, dy: -at.y });
          }),
        })),
      };
    });
    return { pattern: readPattern({ ...source, pieces: sealed(pieces) }), why: null };
  } catch (error) {
    return {
      pattern: null,
      why: t`The file carries a pattern’s structure, but its lines no longer fit it: ${called(error instanceof Error ? error.message : String(error))}.`,
    };
  }
}

/** Rounding in the file leaves ends a hair apart: each edge ends exactly where the next begins. */
function sealed<P extends { edges: { path: Path[] }[] }>(pieces: readonly P[]): P[] {
  return pieces.map((piece) => ({
    ...piece,
    edges: piece.edges.map((edge, i) => {
      const next = piece.edges[(i + 1) % piece.edges.length]!;
      return { ...edge, path: edge.path.map((path, k) => [...path.slice(0, -1), next.path[k]![0]!]) };
    }),
  }));
}
