import type { Pattern } from '../garment/index.ts';

/** Names of a sample's pieces in another language, word by word: longer first. From memory, as the word table. */
export const NAMES: Readonly<Record<'de' | 'nl', readonly (readonly [RegExp, string])[]>> = {
  de: [
    [/^Centre front/, 'Vordere Mitte'],
    [/^Centre back/, 'Rückwärtige Mitte hinten'],
    [/^Side front/, 'Seitliches Vorderteil'],
    [/^Side back/, 'Seitliches Rückenteil'],
    [/^(Front|Back) neck facing/, '$1, Beleg'],
    [/^(Front|Back) yoke and its facing/, '$1 Passe'],
    [/^Skirt /, 'Rock '],
    [/^Trouser /, 'Hose '],
    [/^(Short )?[Ss]leeve/, 'Ärmel'],
    [/^Stand collar/, 'Stehkragen'],
    [/^Waistband/, 'Bund'],
    [/^Neckband/, 'Halsbündchen'],
    [/^Patch pocket/, 'Tasche'],
    [/^Pocket bag/, 'Taschenbeutel'],
    [/^Fly facing/, 'Schlitzbeleg'],
    [/^Fly shield/, 'Schlitzuntertritt'],
    [/\bfront\b/i, 'Vorderteil'],
    [/\bback\b/i, 'Rückenteil'],
    [/, lining/, ', Futter'],
  ],
  nl: [
    [/^Centre front/, 'Middenvoorpand'],
    [/^Centre back/, 'Middenachterpand'],
    [/^Side front/, 'Zijvoorpand'],
    [/^Side back/, 'Zijachterpand'],
    [/^(Front|Back) neck facing/, '$1, beleg'],
    [/^(Front|Back) yoke and its facing/, '$1 schouderpas'],
    [/^Skirt /, 'Rok '],
    [/^Trouser /, 'Broek '],
    [/^(Short )?[Ss]leeve/, 'Mouw'],
    [/^Stand collar/, 'Opstaande kraag'],
    [/^Waistband/, 'Tailleband'],
    [/^Neckband/, 'Halsboord'],
    [/^Patch pocket/, 'Zak'],
    [/^Pocket bag/, 'Zakdeel'],
    [/^Fly facing/, 'Gulpbeleg'],
    [/^Fly shield/, 'Gulponderslag'],
    [/\bfront\b/i, 'voorpand'],
    [/\bback\b/i, 'achterpand'],
    [/, lining/, ', voering'],
  ],
};

/** The sample with its pieces called so. */
export const renamed = (pattern: Pattern, names: (typeof NAMES)['de']): Pattern => ({
  ...pattern,
  pieces: pattern.pieces.map((piece) => ({
    ...piece,
    name: names.reduce((name, [word, other]) => name.replace(word, other), piece.name),
  })),
});
