/**
 * Resistance R₀ at 0 °C in Ω, and A, B, C in °C⁻¹, °C⁻², °C⁻⁴, of R(t) = R₀·[1 + At + Bt² + C(t − 100)t³], C
 * below 0 °C only.
 */
export type CallendarVanDusen = {
  readonly zeroOhm: number;
  readonly a: number;
  readonly b: number;
  readonly c: number;
};

/**
 * IEC 60751:2008 and 2022, platinum resistance thermometers of nominal 100 Ω: the standard's own A, B and C.
 */
export const iec60751: CallendarVanDusen = { zeroOhm: 100, a: 3.9083e-3, b: -5.775e-7, c: -4.183e-12 };

/** IEC 60751: the range of the function. */
export const PLATINUM_FROM_CELSIUS = -200;
export const PLATINUM_TO_CELSIUS = 850;
