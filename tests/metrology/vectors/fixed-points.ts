/**
 * emf in µV at fixed points of the ITS-90. Source: recomputed from the coefficients of NIST SRD 60 in
 * high precision by an independent program, rounded to 0.001 µV.
 */
type ByType = { readonly [type in "B" | "E" | "J" | "K" | "N" | "R" | "S" | "T"]?: number };

export const fixedPoints: readonly { readonly celsius: number; readonly microvolt: ByType }[] = [
  // Zn
  {
    celsius: 419.527,
    microvolt: {
      B: 867.767,
      E: 30511.889,
      J: 22925.45,
      K: 17223.056,
      N: 13701.244,
      R: 3611.303,
      S: 3446.888,
    },
  },
  // Al
  {
    celsius: 660.323,
    microvolt: {
      B: 2167.043,
      E: 49943.096,
      J: 36694.999,
      K: 27460.694,
      N: 22970.482,
      R: 6277.087,
      S: 5860.128,
    },
  },
  // Ag
  {
    celsius: 961.78,
    microvolt: {
      B: 4490.666,
      E: 73494.298,
      J: 55668.751,
      K: 39778.119,
      N: 34776.132,
      R: 10003.433,
      S: 9148.382,
    },
  },
  // Au
  { celsius: 1064.18, microvolt: { B: 5433.539, K: 43755.169, N: 38721.674, R: 11363.745, S: 10334.204 } },
  // Cu
  { celsius: 1084.62, microvolt: { B: 5629.978, K: 44535.131, N: 39501.63, R: 11640.43, S: 10574.801 } },
];

/** emf in µV (0.001 µV) and Seebeck coefficients in µV/°C (the four decimals there), same source. */
export const seebeckGrid: readonly {
  readonly celsius: number;
  readonly microvolt: ByType;
  readonly slope: ByType;
}[] = [
  { celsius: 100, microvolt: { T: 4278.519 }, slope: { T: 46.785 } },
  { celsius: 200, microvolt: { T: 9288.102 }, slope: { T: 53.1498 } },
  {
    celsius: 300,
    microvolt: {
      B: 430.648,
      E: 21036.238,
      J: 16327.206,
      K: 12208.566,
      N: 9341.152,
      R: 2400.552,
      S: 2323.042,
      T: 14861.928,
    },
    slope: { B: 3.0477, E: 77.9081, J: 55.3546, K: 41.4457, N: 35.4223, R: 9.7384, S: 9.1316, T: 58.0877 },
  },
  {
    celsius: 400,
    microvolt: {
      B: 786.532,
      E: 28945.964,
      J: 21848.065,
      K: 16397.142,
      N: 12973.686,
      R: 3407.685,
      S: 3259.357,
      T: 20871.97,
    },
    slope: { B: 4.0633, E: 80.0557, J: 55.1517, K: 42.2405, N: 37.1252, R: 10.374, S: 9.5684, T: 61.8049 },
  },
  {
    celsius: 500,
    microvolt: {
      B: 1241.85,
      E: 37005.354,
      J: 27392.631,
      K: 20644.286,
      N: 16747.857,
      R: 4471.261,
      S: 4233.294,
    },
    slope: { B: 5.0352, E: 80.9298, J: 55.9875, K: 42.6283, N: 38.2747, R: 10.8852, S: 9.9008 },
  },
  {
    celsius: 600,
    microvolt: {
      B: 1791.868,
      E: 45093.357,
      J: 33102.41,
      K: 24905.467,
      N: 20613.107,
      R: 5583.451,
      S: 5238.69,
    },
    slope: { B: 5.9561, E: 80.66, J: 58.4918, K: 42.505, N: 38.9586, R: 11.3567, S: 10.2072 },
  },
  {
    celsius: 700,
    microvolt: {
      B: 2430.626,
      E: 53112.392,
      J: 39131.825,
      K: 29128.974,
      N: 24526.652,
      R: 6742.725,
      S: 6275.247,
    },
    slope: { B: 6.8113, E: 79.65, J: 62.1506, K: 41.898, N: 39.2557, R: 11.8305, S: 10.5278 },
  },
  {
    celsius: 800,
    microvolt: { B: 3153.61, E: 61017.372, J: 45494.394, K: 33275.38, N: 28454.52, R: 7949.838, S: 7344.982 },
    slope: { B: 7.6413, E: 78.4314, J: 64.6325, K: 41.0002, N: 39.2601, R: 12.3121, S: 10.8695 },
  },
  {
    celsius: 900,
    microvolt: {
      B: 3956.947,
      E: 68786.591,
      J: 51877.283,
      K: 37325.915,
      N: 32371.258,
      R: 9204.865,
      S: 8449.243,
    },
    slope: { B: 8.4145, E: 76.8349, J: 62.4385, K: 40.005, N: 39.0399, R: 12.7853, S: 11.214 },
  },
  {
    celsius: 1000,
    microvolt: {
      B: 4834.339,
      E: 76372.826,
      J: 57953.41,
      K: 41275.606,
      N: 36255.538,
      R: 10505.958,
      S: 9587.098,
    },
    slope: { B: 9.1229, E: 75.1559, J: 59.2611, K: 38.9814, N: 38.6106, R: 13.2308, S: 11.5393 },
  },
  {
    celsius: 1100,
    microvolt: { B: 5779.517, J: 63792.218, K: 45118.736, N: 40086.606, R: 11849.642, S: 10756.545 },
    slope: { B: 9.7708, J: 57.8422, K: 37.8522, N: 37.9803, R: 13.6302, S: 11.8357 },
  },
  {
    celsius: 1200,
    microvolt: { B: 6786.427, J: 69553.18, K: 48838.238, N: 43846.36, R: 13227.965, S: 11950.549 },
    slope: { B: 10.3563, J: 57.2405, K: 36.4937, N: 37.1877, R: 13.9155, S: 12.0285 },
  },
];
