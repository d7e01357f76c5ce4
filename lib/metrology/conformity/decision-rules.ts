import type { ConformityRule } from "./guard-band";

/** A decision rule as published, with the risk it states at its acceptance limit. */
export type PublishedRule = {
  readonly name: string;
  /** w/U. */
  readonly guardBandRatio: number;
  readonly statedRisk: string;
  readonly rule: ConformityRule;
};

const guarded = (name: string, guardBandRatio: number, statedRisk: string): PublishedRule => ({
  name,
  guardBandRatio,
  statedRisk,
  rule: { kind: "guarded-binary", guardBandRatio },
});

/**
 * ILAC-G8:09/2019, Table 1 (from memory; its risks are reproduced by Φ(−2·w/U) with U = 2u, and by tests). The risk is
 * that of false acceptance, one-sided, at the acceptance limit; for the last, the uncritical rule, that of false rejection.
 */
export const publishedRules: readonly PublishedRule[] = [
  guarded("6 sigma", 3, "< 1 ppm false acceptance"),
  guarded("3 sigma", 1.5, "< 0.16 % false acceptance"),
  guarded("ILAC-G8:2009", 1, "< 2.5 % false acceptance"),
  guarded("ISO 14253-1:2017", 0.83, "< 5 % false acceptance"),
  {
    name: "Simple acceptance",
    guardBandRatio: 0,
    statedRisk: "< 50 % false acceptance",
    rule: { kind: "simple" },
  },
  guarded("Uncritical", -1, "< 2.5 % false rejection"),
];
