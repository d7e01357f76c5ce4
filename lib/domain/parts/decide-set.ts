import type { LineOptions } from "../order/options";

export const setKinds = ["as-received", "after-anneal"] as const;
export type SetKind = (typeof setKinds)[number];
export const setKindLabels: Readonly<Record<SetKind, string>> = {
  "as-received": "As received",
  "after-anneal": "After annealing",
};

export const asSetKind = (stored: string): SetKind => {
  const known = setKinds.find((one) => one === stored);
  if (!known) throw new Error(`a set of results is stored as ${stored}, which none can be`);
  return known;
};

/** Which set the next measurement of a sensor belongs to; null = it has to be annealed first. */
export const nextSet = (
  { sets }: Pick<LineOptions, "sets">,
  given: { readonly hasReceivedSet: boolean; readonly isAnnealed: boolean },
): SetKind | null => {
  if (sets === "as-received") return "as-received";
  if (given.isAnnealed) return "after-anneal";
  return sets === "both" && !given.hasReceivedSet ? "as-received" : null;
};
