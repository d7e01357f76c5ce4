import type { FixedPointRatios } from "./fixed-point";

/**
 * ITS-90 (Metrologia 27 (1990) 3), section 3.3: W(29.7646 °C) ≥ 1.118 07 or W(−38.8344 °C) ≤ 0.844 235; the
 * second from memory.
 */
const LEAST_GALLIUM = 1.11807;
const MOST_MERCURY = 0.844235;
/** The same, for use up to the silver point: W(961.78 °C) ≥ 4.2844 (from memory). */
const LEAST_SILVER = 4.2844;

export type SprtAcceptance =
  | { readonly kind: "accepted" }
  | { readonly kind: "refused"; readonly reason: string }
  | { readonly kind: "not-shown"; readonly reason: string };

/**
 * Whether the platinum is pure and strain-free enough for the ITS-90, from W at the fixed points (pure
 * numbers): W(Ga) ≥ 1.11807 or W(Hg) ≤ 0.844235, and W(Ag) ≥ 4.2844 too for use to the silver point.
 * "not-shown" when the ratios that would decide were not measured; a ratio that is not a number shows
 * nothing.
 */
export function sprtAcceptance(ratios: FixedPointRatios, isForSilver: boolean): SprtAcceptance {
  const { Ga = Number.NaN, Hg = Number.NaN, Ag = Number.NaN } = ratios;
  if (!(Ga >= LEAST_GALLIUM || Hg <= MOST_MERCURY)) {
    return Number.isNaN(Ga) && Number.isNaN(Hg)
      ? { kind: "not-shown", reason: "neither W(Ga) nor W(Hg) was measured" }
      : { kind: "refused", reason: `W(Ga) is below ${LEAST_GALLIUM} or W(Hg) above ${MOST_MERCURY}` };
  }
  if (!isForSilver || Ag >= LEAST_SILVER) return { kind: "accepted" };
  return Number.isNaN(Ag)
    ? { kind: "not-shown", reason: "W(Ag) was not measured" }
    : { kind: "refused", reason: `W(Ag) is below ${LEAST_SILVER}` };
}
