import { publishedTable, publishedValues } from "./published-value";

/** Normal process of deviation 1, measured with u, limits ±limit, accepted within ±acceptance. */
type Process = {
  readonly u: number;
  readonly limit: number;
  readonly acceptance: number;
  readonly risk: "consumer" | "producer";
};

const paper = {
  absolute: 1e-4,
  reason: "0.002445 by two independent integrations; the paper gives 0.25 %",
} as const;

export const deaverRisks = publishedTable<Process>(
  "Deaver, false accept and reject",
  {
    document: "D. Deaver, How to maintain your confidence, NCSL 1993, pages 7 and 10",
    readAt: "sandialabs/suncal: test/test_risk.py",
    provenance: "read",
  },
  [
    [{ u: 0.25, limit: 2, acceptance: 2, risk: "consumer" }, "2 sigma, 4:1, false accept", "0.008"],
    [{ u: 0.25, limit: 2, acceptance: 2, risk: "producer" }, "2 sigma, 4:1, false reject", "0.015"],
    [
      { u: 0.25, limit: 2.5, acceptance: 2.5, risk: "consumer" },
      "2.5 sigma, 4:1, false accept",
      "0.0025",
      paper,
    ],
    [{ u: 1, limit: 2.5, acceptance: 2.5, risk: "consumer" }, "2.5 sigma, 1:1, false accept", "0.005"],
    [
      { u: 0.5, limit: 2, acceptance: 1.82, risk: "consumer" },
      "2 sigma, 2:1, limits at 91 %, false accept",
      "0.008",
    ],
    [
      { u: 0.5, limit: 2, acceptance: 1.82, risk: "producer" },
      "2 sigma, 2:1, limits at 91 %, false reject",
      "0.066",
    ],
  ],
);

/** Risk at the acceptance limit, in percent. */
export const ilacG8 = publishedValues(
  "ILAC-G8, specific risk",
  {
    document: "ILAC-G8:09/2019, 4.2.1 and table 1",
    readAt: "https://origin.tuv.com/vietnam/en/about-us/t%c3%bcv-rheinland-vietnam/decision-rule",
    provenance: "read",
  },
  { simple: ["4.2.1: up to 50 % with simple acceptance", "50"] },
);

type OneSided = {
  readonly value: number;
  readonly u: number;
  readonly lower: number;
  readonly upper: number;
};

export const jcgm106Remembered = publishedTable<OneSided>(
  "JCGM 106, conformance probability",
  { document: "JCGM 106:2012, 7.3.3", readAt: "", provenance: "from-memory" },
  [
    [
      { value: -5.47, u: 0.05, lower: Number.NEGATIVE_INFINITY, upper: -5.4 },
      "example 1, breakdown voltage of a Zener diode",
      "0.92",
    ],
    [
      { value: 509.7, u: 8.6, lower: 490, upper: Number.POSITIVE_INFINITY },
      "example 2, burst strength of a container",
      "0.99",
    ],
  ],
);
