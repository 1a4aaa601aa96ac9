/** A share in words, to a tenth of a percent. */
export const percent = (share: number): string => `${Math.round(share * 1000) / 10} %`;
