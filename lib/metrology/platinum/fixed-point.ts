/**
 * Defining fixed points of the ITS-90 at which standard platinum resistance thermometers are calibrated, T in
 * kelvin: H. Preston-Thomas,
 * Metrologia 27 (1990) 3, table 1. Triple points of argon and mercury, melting point of gallium, freezing
 * points of the others.
 */
export const fixedPointKelvin = {
  Ar: 83.8058,
  Hg: 234.3156,
  Ga: 302.9146,
  In: 429.7485,
  Sn: 505.078,
  Zn: 692.677,
  Al: 933.473,
  Ag: 1234.93,
} as const;

export type FixedPoint = keyof typeof fixedPointKelvin;

/** W = R(T)/R(273.16 K) as measured at fixed points. */
export type FixedPointRatios = { readonly [point in FixedPoint]?: number };
