import type { BodyTable } from './body-table.ts';

const FIGURE_TYPES =
  'US standard body measurements for home sewing, 1967 and after, as transcribed in an educational chart';

/** EN 13402-3, women, dress sizes by bust girth in cm (steps of 4, then 6). */
export const EN_WOMEN: BodyTable = {
  id: 'en-women',
  name: 'Women by bust girth',
  wearer: 'woman',
  unit: 'cm',
  waist: 'iso',
  mark: 'memory',
  source: 'EN 13402-3, women (intervals of 4 then 6 cm; from memory)',
  sizes: [
    '76',
    '80',
    '84',
    '88',
    '92',
    '96',
    '100',
    '104',
    '110',
    '116',
    '122',
    '128',
    '134',
    '140',
    '146',
    '152',
  ],
  rows: {
    'bust-girth': [76, 80, 84, 88, 92, 96, 100, 104, 110, 116, 122, 128, 134, 140, 146, 152],
    'waist-girth': [60, 64, 68, 72, 76, 80, 84, 88, 94, 100, 106, 112, 118, 124, 130, 136],
    'hip-girth': [84, 88, 92, 96, 100, 104, 108, 112, 117, 122, 127, 132, 137, 142, 147, 152],
  },
};

/**
 * Children by height in cm, steps of 6, after the practice of EN 13402-3 (height is the size; chest, waist and hip go with it).
 * From memory; girls and boys share chest and waist to 134, the hip is the girls'.
 */
export const EN_CHILDREN: BodyTable = {
  id: 'en-children',
  name: 'Children by height',
  wearer: 'child',
  unit: 'cm',
  waist: 'natural',
  mark: 'memory',
  source: 'EN 13402-3 practice, children by height in steps of 6 cm (from memory)',
  sizes: ['92', '98', '104', '110', '116', '122', '128', '134', '140', '146', '152', '158', '164'],
  rows: {
    stature: [92, 98, 104, 110, 116, 122, 128, 134, 140, 146, 152, 158, 164],
    'bust-girth': [53, 55, 57, 59, 61, 63, 66, 69, 72, 76, 80, 84, 88],
    'waist-girth': [52, 53, 54, 55, 57, 58, 60, 62, 64, 66, 68, 70, 72],
    'hip-girth': [55, 57, 59, 62, 65, 67, 71, 74, 78, 82, 86, 90, 94],
    'back-waist-length': [23, 24, 25, 26, 27.5, 28.5, 30, 31.5, 33, 34.5, 36, 37.5, 39],
    'arm-length': [31, 33, 35.5, 38, 40.5, 43, 45, 47.5, 50, 52.5, 54.5, 56.5, 58.5],
    'head-girth': [50, 50.5, 51, 51.5, 52, 52.5, 53, 53.5, 54, 54.5, 55, 55.5, 56],
  },
};

/** Misses, 5 ft 5 to 5 ft 6 in tall. Size 22 from memory, the rest seen. */
export const US_MISSES: BodyTable = {
  id: 'us-misses',
  name: 'Misses',
  wearer: 'woman',
  unit: 'in',
  waist: 'natural',
  mark: 'seen',
  source: FIGURE_TYPES,
  sizes: ['6', '8', '10', '12', '14', '16', '18', '20', '22'],
  rows: {
    'bust-girth': [30.5, 31.5, 32.5, 34, 36, 38, 40, 42, 44],
    'waist-girth': [23, 24, 25, 26.5, 28, 30, 32, 34, 37],
    'hip-girth': [32.5, 33.5, 34.5, 36, 38, 40, 42, 44, 46],
    'back-waist-length': [15.5, 15.75, 16, 16.25, 16.5, 16.75, 17, 17.25, 17.375],
  },
};

/** Women, 5 ft 5 to 5 ft 6 in, a larger and fuller figure. */
export const US_WOMEN: BodyTable = {
  id: 'us-women',
  name: 'Women',
  wearer: 'woman',
  unit: 'in',
  waist: 'natural',
  mark: 'seen',
  source: FIGURE_TYPES,
  sizes: ['38', '40', '42', '44', '46', '48', '50'],
  rows: {
    'bust-girth': [42, 44, 46, 48, 50, 52, 54],
    'waist-girth': [35, 37, 39, 41.5, 44, 46.5, 49],
    'hip-girth': [44, 46, 48, 50, 52, 54, 56],
    'back-waist-length': [17.25, 17.375, 17.5, 17.625, 17.75, 17.875, 18],
  },
};

/** Small misses, 5 ft 2 to 5 ft 4 in. */
export const US_PETITE: BodyTable = {
  id: 'us-petite',
  name: 'Small misses',
  wearer: 'woman',
  unit: 'in',
  waist: 'natural',
  mark: 'seen',
  source: FIGURE_TYPES,
  sizes: ['6mp', '8mp', '10mp', '12mp', '14mp', '16mp'],
  rows: {
    'bust-girth': [30.5, 31.5, 32.5, 34, 36, 38],
    'waist-girth': [23.5, 24.5, 25.5, 27, 28.5, 30.5],
    'hip-girth': [32.5, 33.5, 34.5, 36, 38, 40],
    'back-waist-length': [14.5, 14.75, 15, 15.25, 15.5, 15.75],
  },
};

/** Half sizes, 5 ft 2 to 5 ft 3 in, short back, fuller waist and hip. */
export const US_HALF: BodyTable = {
  id: 'us-half',
  name: 'Half sizes',
  wearer: 'woman',
  unit: 'in',
  waist: 'natural',
  mark: 'memory',
  source: `${FIGURE_TYPES} (from memory)`,
  sizes: ['10.5', '12.5', '14.5', '16.5', '18.5', '20.5', '22.5', '24.5'],
  rows: {
    'bust-girth': [33, 35, 37, 39, 41, 43, 45, 47],
    'waist-girth': [27, 29, 31, 33, 35, 37.5, 40, 42.5],
    'hip-girth': [35, 37, 39, 41, 43, 45.5, 48, 50.5],
    'back-waist-length': [15, 15.25, 15.5, 15.75, 15.875, 16, 16.125, 16.25],
  },
};

/** Juniors, 5 ft 4 to 5 ft 5 in, higher bust, shorter waist. */
export const US_JUNIOR: BodyTable = {
  id: 'us-junior',
  name: 'Juniors',
  wearer: 'woman',
  unit: 'in',
  waist: 'natural',
  mark: 'memory',
  source: `${FIGURE_TYPES} (from memory)`,
  sizes: ['5', '7', '9', '11', '13', '15'],
  rows: {
    'bust-girth': [30, 31, 32, 33.5, 35, 37],
    'waist-girth': [22.5, 23.5, 24.5, 25.5, 27, 29],
    'hip-girth': [32, 33, 34, 35.5, 37, 39],
    'back-waist-length': [15, 15.25, 15.5, 15.75, 16, 16.25],
  },
};

export const US_GIRLS: BodyTable = {
  id: 'us-girls',
  name: 'Girls',
  wearer: 'child',
  unit: 'in',
  waist: 'natural',
  mark: 'memory',
  source: `${FIGURE_TYPES} (from memory)`,
  sizes: ['7', '8', '10', '12', '14'],
  rows: {
    'bust-girth': [26, 27, 28.5, 30, 32],
    'waist-girth': [23, 23.5, 24.5, 25.5, 26.5],
    'hip-girth': [27, 28, 30, 32, 34],
    'back-waist-length': [11.5, 12, 12.75, 13.5, 14.25],
  },
};

/** Men by chest. */
export const US_MEN: BodyTable = {
  id: 'us-men',
  name: 'Men',
  wearer: 'man',
  unit: 'in',
  waist: 'natural',
  mark: 'memory',
  source: `${FIGURE_TYPES} (from memory)`,
  sizes: ['34', '36', '38', '40', '42', '44', '46', '48'],
  rows: {
    'bust-girth': [34, 36, 38, 40, 42, 44, 46, 48],
    'waist-girth': [28, 30, 32, 34, 36, 39, 42, 44],
    'hip-girth': [35, 37, 39, 41, 43, 45, 47, 49],
    // Sizes of the neckband: a collar's, not of the neck's base.
    'neck-girth': [14, 14.5, 15, 15.5, 16, 16.5, 17, 17.5],
  },
};

/** The published body tables we carry. The ASTM D5585 figures are copyrighted and are used in `checks/` only. */
export const BODY_TABLES: readonly BodyTable[] = [
  EN_WOMEN,
  EN_CHILDREN,
  US_MISSES,
  US_WOMEN,
  US_PETITE,
  US_HALF,
  US_JUNIOR,
  US_GIRLS,
  US_MEN,
];
