import type { DrawnPiece, Fitting, Garment, NestedPiece, Pattern } from '../../garment/index.ts';

/** Gives every value of a drawn piece once per size, for one size. */
function asNest(piece: DrawnPiece): NestedPiece {
  return {
    ...piece,
    edges: piece.edges.map((edge) => ({
      ...edge,
      path: [edge.path],
      crossings: edge.crossings.map((one) => ({ level: one.level, at: [one.at] })),
      notches: edge.notches.map((notch) => ({ ...notch, at: [notch.at] })),
    })),
    lines: piece.lines.map((line) => ({ ...line, path: [line.path] })),
    marks: piece.marks.map((mark) => ({ ...mark, at: [mark.at] })),
  };
}

/**
 * One person's finished pieces as a pattern of a single size, so that whatever writes patterns writes them too. The maker's table is
 * left behind: it says nothing of these pieces.
 */
export function wornPattern(fitting: Fitting, garment: Garment): Pattern {
  const { pattern } = fitting;
  return {
    ...pattern,
    id: fitting.id,
    name: fitting.title,
    about: `The pieces of ${pattern.name} as altered for one person.`,
    chart: {
      sizes: [{ id: 'own', label: 'own' }],
      waist: pattern.chart.waist,
      body: {},
      finished: {},
      finishedLengths: {},
      source: `Made from ${pattern.name}; no table belongs to it.`,
    },
    pieces: garment.pieces.map(asNest),
    seams: garment.seams,
    followers: garment.followers,
    bands: garment.bands,
    levels: garment.levels,
  };
}
