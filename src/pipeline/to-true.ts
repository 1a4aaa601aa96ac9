import { SCHEMATIC, applyStep, type Alteration } from '../alter/index.ts';
import { trueGarment, type Change } from '../check/index.ts';
import { t, word, type Garment, type Part, type Phrase, type PieceId, pieceAt } from '../garment/index.ts';

/** A part of the plain garment by its name, as it stands in a sentence: a word of ours, since the garment is. */
const plainWord = (name: string): Part & object =>
  word('plain garment', name, name.charAt(0).toLowerCase() + name.slice(1));

function sayChange(garment: Garment, change: Change, leads: (piece: PieceId) => boolean): Phrase | undefined {
  if (change.kind === 'seam' || change.kind === 'band' || change.kind === 'notch') {
    const seam = garment.seams.find((s) => s.id === change.seam);
    const pieces = [...(seam?.a ?? []), ...(seam?.b ?? [])].map((r) => r.piece);
    // The two legs of a dart are told as the dart.
    if (!seam || new Set(pieces).size < 2 || !pieces.some(leads)) return undefined;
    return change.kind === 'notch'
      ? t`notches of the ${plainWord(seam.name)}`
      : t`length of the ${plainWord(seam.name)}`;
  }
  const piece = pieceAt(garment, change.piece);
  if (!piece || !leads(piece.id)) return undefined;
  if (change.kind === 'dart') {
    const dart = piece.darts.find((d) => d.id === change.dart);
    return dart && t`legs of the ${plainWord(dart.name)}, and the line over its mouth`;
  }
  const edge = piece.edges.find((e) => e.id === change.edge);
  return edge && t`“${plainWord(edge.name)}” where it meets its neighbour`;
}

/**
 * What is to be trued after an alteration: what truing changes after it has been made, with the exaggerated amounts of its drawing, on the plain garment
 * of the drawing. Facings and linings follow their pieces and are not named again. Phrases, each once; empty where it leaves the plain garment true.
 */
export function toTrue(entry: Alteration): readonly Phrase[] {
  const plain = SCHEMATIC[entry.shows.on];
  const before = trueGarment(plain, { reference: plain }).garment;
  const step = { id: 'shown', kind: 'alter' as const, entry: entry.id, params: entry.shows.params };
  const { garment } = applyStep(before, step);
  const follows = new Set(garment.followers.map((f) => f.piece));
  const said = trueGarment(garment, { reference: before }).changes.map((change) =>
    sayChange(garment, change, (piece) => !follows.has(piece)),
  );
  const known = new Map(said.flatMap((words) => (words ? [[JSON.stringify(words), words] as const] : [])));
  return [...known.values()];
}
