import type { ByDiameter } from "./policy";

/** Metric sizes stand a little below the gauge they replace: 0.5 mm for 0.51 mm (common practice, no source). */
const metricShare = 0.95;

export type DiameterLimit =
  | { readonly kind: "known"; readonly maximumCelsius: number }
  /** Thinner than the thinnest of the table: it bears no more than that one, and nobody says how much less. */
  | { readonly kind: "at-most"; readonly maximumCelsius: number }
  | { readonly kind: "none" };

/** What a table by diameter says of a size: the limit of the next thinner one. */
export const limitByDiameter = (
  table: ByDiameter,
  type: string,
  diameterMillimetre: number,
): DiameterLimit => {
  const ofType = table.rows
    .filter(({ types }) => types.includes(type))
    .toSorted((a, b) => b.diameterMillimetre - a.diameterMillimetre);
  const thinnest = ofType.at(-1);
  if (!thinnest) return { kind: "none" };
  const nearest = ofType.find((row) => row.diameterMillimetre * metricShare <= diameterMillimetre);
  return nearest
    ? { kind: "known", maximumCelsius: nearest.maximumCelsius }
    : { kind: "at-most", maximumCelsius: thinnest.maximumCelsius };
};
