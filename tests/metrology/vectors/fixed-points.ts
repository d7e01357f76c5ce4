/**
 * emf in µV at fixed points of the ITS-90. Source: recomputed from the coefficients of NIST SRD 60 in
 * high precision by an independent program, rounded to 0.001 µV.
 */
export const fixedPoints: readonly {
  readonly celsius: number;
  readonly microvolt: { readonly R: number; readonly S: number; readonly K: number; readonly N: number };
}[] = [
  { celsius: 419.527, microvolt: { R: 3611.303, S: 3446.888, K: 17223.056, N: 13701.244 } },
  { celsius: 660.323, microvolt: { R: 6277.087, S: 5860.128, K: 27460.694, N: 22970.482 } },
  { celsius: 961.78, microvolt: { R: 10003.433, S: 9148.382, K: 39778.119, N: 34776.132 } },
  { celsius: 1064.18, microvolt: { R: 11363.745, S: 10334.204, K: 43755.169, N: 38721.674 } },
  { celsius: 1084.62, microvolt: { R: 11640.43, S: 10574.801, K: 44535.131, N: 39501.63 } },
];

/** Seebeck coefficients in µV/°C, same source; the four decimals there. */
export const seebeckGrid: readonly {
  readonly celsius: number;
  readonly slope: { readonly R: number; readonly S: number; readonly K: number; readonly N: number };
}[] = [
  { celsius: 300, slope: { R: 9.7384, S: 9.1316, K: 41.4457, N: 35.4223 } },
  { celsius: 400, slope: { R: 10.374, S: 9.5684, K: 42.2405, N: 37.1252 } },
  { celsius: 500, slope: { R: 10.8852, S: 9.9008, K: 42.6283, N: 38.2747 } },
  { celsius: 600, slope: { R: 11.3567, S: 10.2072, K: 42.505, N: 38.9586 } },
  { celsius: 700, slope: { R: 11.8305, S: 10.5278, K: 41.898, N: 39.2557 } },
  { celsius: 800, slope: { R: 12.3121, S: 10.8695, K: 41.0002, N: 39.2601 } },
  { celsius: 900, slope: { R: 12.7853, S: 11.214, K: 40.005, N: 39.0399 } },
  { celsius: 1000, slope: { R: 13.2308, S: 11.5393, K: 38.9814, N: 38.6106 } },
  { celsius: 1100, slope: { R: 13.6302, S: 11.8357, K: 37.8522, N: 37.9803 } },
  { celsius: 1200, slope: { R: 13.9155, S: 12.0285, K: 36.4937, N: 37.1877 } },
];
