import type { ToleranceClassRules, ToleranceRuleSet } from "./rule-set";

/** One stretch in °C: the larger of the fixed part and the percentage of |t|. */
function larger(from: number, to: number, fixed: number, percent: number): ToleranceClassRules {
  return [{ fromCelsius: from, toCelsius: to, fixed, percent, unit: "°C", origin: 0, base: 0 }];
}

const baseMetal = (class1To: number, class2To: number) => ({
  "1": larger(-40, class1To, 1.5, 0.4),
  "2": larger(-40, class2To, 2.5, 0.75),
});

/** Class 3 of E, K and N: for use below 40 °C. Type J has none. */
const class3 = larger(-200, 40, 2.5, 1.5);

const nickelBased = { ...baseMetal(1000, 1200), "3": class3 };

const platinumBased = {
  // 1 °C up to 1100 °C, then 1 + 0.003·(t − 1100). Below 1100 °C nothing grows, hence two stretches.
  "1": [
    { fromCelsius: 0, toCelsius: 1100, fixed: 1, percent: 0, unit: "°C", origin: 0, base: 0 },
    { fromCelsius: 1100, toCelsius: 1600, fixed: 1, percent: 0.3, unit: "°C", origin: 1100, base: 1 },
  ],
  "2": larger(0, 1600, 1.5, 0.25),
} as const;

/**
 * IEC 60584-1:2013, clause 6 (tolerances; clause number from memory), reference junction at 0 °C. The values were read
 * in published copies of its table. Class 1 of K and N ends at 1000 °C. Wrong tables circulate (class 3 as 4.0 °C or
 * 1 %, R and S from 1000 °C): these are not those.
 */
export const iec60584: ToleranceRuleSet = {
  id: "iec-60584-1-2013",
  title: "IEC 60584-1:2013",
  edition: "2013 (edition 3)",
  source: "IEC 60584-1:2013, table of tolerances, read in published copies",
  types: {
    T: { "1": larger(-40, 350, 0.5, 0.4), "2": larger(-40, 350, 1, 0.75), "3": larger(-200, 40, 1, 1.5) },
    E: { ...baseMetal(800, 900), "3": class3 },
    J: baseMetal(750, 750),
    K: nickelBased,
    N: nickelBased,
    R: platinumBased,
    S: platinumBased,
    // 0.25 % of 600 °C is 1.5 °C already: the 1.5 °C that some tables print never bites.
    B: { "2": larger(600, 1700, 0, 0.25), "3": larger(600, 1700, 4, 0.5) },
    C: { "2": larger(426, 2315, 0, 1) },
    A: { "2": larger(1000, 2500, 0, 1) },
  },
};
