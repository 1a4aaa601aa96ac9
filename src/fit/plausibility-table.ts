import type { MeasureId } from '../garment/index.ts';

/**
 * How body measures go together: mean and covariance (mm, mm²) of sewing measures in ANSUR I, the 1988 survey of US Army personnel
 * (2,208 women, 1,774 men; US Government work, public domain). Our derivative: aggregates only, no person's data.
 * The population is adult, fit and weight-limited, so the limits drawn from it are widened before use. The survey's waist-to-hip length is
 * left out: it was taken from the navel, not from the natural waist.
 */
export interface Survey {
  readonly count: number;
  readonly measures: readonly MeasureId[];
  readonly mean: readonly number[];
  /** Rows of the lower triangle with the diagonal. */
  readonly covariance: readonly (readonly number[])[];
}

export const WOMEN: Survey = {
  count: 2208,
  measures: [
    'stature',
    'neck-base-girth',
    'shoulder-length',
    'upper-bust-girth',
    'bust-girth',
    'under-bust-girth',
    'waist-girth',
    'hip-girth',
    'back-waist-length',
    'centre-front-length',
    'bust-spread',
    'bust-height',
    'upper-arm-girth',
    'scye-depth',
    'across-back',
  ],
  mean: [
    1629.4, 346.2, 144.7, 887.0, 907.1, 769.7, 725.5, 966.9, 367.3, 311.7, 184.8, 268.0, 291.6, 185.7, 352.0,
  ],
  covariance: [
    [4045.5],
    [404.1, 266.7],
    [237.5, 21.0, 117.2],
    [975.3, 563.6, 91.9, 2833.1],
    [898.2, 620.0, 51.0, 3047.0, 4034.4],
    [863.8, 490.9, 41.9, 2362.9, 2833.0, 2599.3],
    [754.9, 635.6, 26.4, 2797.2, 3454.9, 2771.6, 3972.6],
    [1381.2, 536.1, 73.6, 2286.8, 2704.3, 2084.1, 2806.8, 3622.0],
    [760.3, 78.2, 68.4, 183.3, 227.8, 222.0, 116.0, 264.6, 627.3],
    [575.7, 29.4, 46.4, 218.1, 240.8, 245.9, 91.9, 211.3, 448.7, 551.5],
    [211.7, 90.0, 16.8, 380.1, 549.4, 378.0, 447.6, 358.3, 27.4, 41.0, 262.2],
    [400.2, 145.8, 54.5, 638.3, 900.9, 560.3, 762.0, 690.5, 116.0, 123.2, 145.4, 496.9],
    [233.2, 240.3, 12.5, 1072.7, 1242.6, 950.6, 1259.4, 1093.0, 24.9, 40.4, 153.7, 284.9, 597.3],
    [362.1, 92.0, 59.7, 286.4, 347.0, 266.8, 350.5, 364.5, 184.5, 64.6, 39.7, 119.8, 129.8, 207.2],
    [364.3, 210.0, 71.4, 983.9, 1048.3, 795.0, 947.5, 761.5, 127.0, 84.6, 107.3, 240.4, 336.9, 107.2, 704.3],
  ],
};

export const MEN: Survey = {
  count: 1774,
  measures: [
    'stature',
    'neck-base-girth',
    'shoulder-length',
    'upper-bust-girth',
    'bust-girth',
    'under-bust-girth',
    'waist-girth',
    'hip-girth',
    'back-waist-length',
    'centre-front-length',
    'bust-spread',
    'bust-height',
    'upper-arm-girth',
    'scye-depth',
    'across-back',
  ],
  mean: [
    1755.8, 408.4, 150.5, 1023.2, 991.4, 926.1, 839.9, 983.7, 412.0, 345.6, 215.9, 272.4, 335.0, 212.7, 401.5,
  ],
  covariance: [
    [4463.2],
    [483.3, 420.4],
    [221.9, 14.6, 121.6],
    [1476.9, 912.3, 117.7, 4272.5],
    [1440.6, 925.2, 98.1, 4352.4, 4769.1],
    [1280.0, 853.3, 63.6, 3958.1, 4367.4, 4284.6],
    [1259.3, 963.6, 59.1, 4003.6, 4495.0, 4388.6, 5480.2],
    [1667.6, 800.4, 91.7, 3253.8, 3500.6, 3278.6, 3845.2, 3866.3],
    [921.2, 109.8, 69.3, 356.8, 401.2, 410.9, 303.6, 354.9, 539.2],
    [733.9, 57.2, 49.7, 376.6, 384.2, 416.5, 280.5, 322.5, 358.4, 476.5],
    [357.0, 188.7, 17.7, 818.6, 921.0, 840.3, 922.0, 691.9, 95.3, 67.5, 357.9],
    [487.0, 190.6, 54.6, 789.9, 861.5, 792.4, 901.8, 748.1, 162.0, 138.7, 180.6, 329.3],
    [405.6, 359.8, 24.7, 1470.0, 1545.0, 1409.7, 1572.2, 1375.6, 75.9, 95.9, 288.6, 293.5, 736.4],
    [398.5, 130.8, 71.3, 437.7, 485.0, 441.0, 526.7, 452.0, 202.6, 83.5, 107.8, 146.3, 171.2, 241.1],
    [
      571.2, 357.4, 93.8, 1466.3, 1485.5, 1341.5, 1324.3, 1052.7, 188.0, 142.6, 222.1, 263.9, 461.5, 197.0,
      987.8,
    ],
  ],
};
