/** Letters by growing size; numbers come as they count. */
const LETTERS = ['XXXXS', 'XXXS', 'XXS', 'XS', 'S', 'M', 'L', 'XL', 'XXL', 'XXXL', 'XXXXL', 'XXXXXL'];

/** A number by which names of sizes are in their order: of the number itself, or of the letters' ladder (`2XL` is `XXL`); NaN or −1 for others. */
export function sizeRank(name: string): number {
  const many = /^([2-6])XL?$/.exec(name);
  if (many) return LETTERS.indexOf('L') + Number(many[1]);
  const letter = LETTERS.indexOf(name);
  return letter >= 0 ? letter : parseInt(name, 10);
}
