import type { ToleranceRule, ToleranceRuleSet } from "./rule-set";

function stretch(from: number, to: number, fixed: number, percent: number, note?: string): ToleranceRule {
  return {
    fromCelsius: from,
    toCelsius: to,
    fixed,
    percent,
    unit: "°C",
    origin: 0,
    base: 0,
    ...(note === undefined ? {} : { note }),
  };
}

const onlyIfOrdered = "holds only where ordered for temperatures below 0 °C";
const guideOnly = "a guide, and no tolerance unless purchaser and maker agree";

/** K and N alike above 0 °C; only K has a tolerance below. */
const nickelBased = {
  standard: [stretch(0, 1260, 2.2, 0.75)],
  special: [stretch(0, 1260, 1.1, 0.4)],
};

const platinumBased = {
  standard: [stretch(0, 1480, 1.5, 0.25)],
  special: [stretch(0, 1480, 0.6, 0.1)],
};

/**
 * ASTM E230/E230M, table of tolerances on initial values, read in published copies; type C from memory. The percentage is
 * of the temperature in °C, and a tolerance in °F is 1.8 times the one in °C (its own note): hence the unit °C throughout.
 * It holds for new, essentially homogeneous wire of 0.25 mm to 3 mm; it makes no allowance for use.
 */
export const astmE230: ToleranceRuleSet = {
  id: "astm-e230",
  title: "ASTM E230/E230M",
  edition: "2017 (edition from memory)",
  source: "ASTM E230/E230M, table of tolerances, read in published copies; type C from memory",
  types: {
    T: {
      standard: [stretch(0, 370, 1, 0.75), stretch(-200, 0, 1, 1.5, onlyIfOrdered)],
      special: [stretch(0, 370, 0.5, 0.4), stretch(-200, 0, 0.5, 0.8, guideOnly)],
    },
    J: { standard: [stretch(0, 760, 2.2, 0.75)], special: [stretch(0, 760, 1.1, 0.4)] },
    E: {
      standard: [stretch(0, 870, 1.7, 0.5), stretch(-200, 0, 1.7, 1, onlyIfOrdered)],
      special: [stretch(0, 870, 1, 0.4), stretch(-200, 0, 1, 0.5, guideOnly)],
      // Mineral-insulated metal-sheathed type E has its own limit.
      "standard-sheathed": [stretch(0, 870, 2.2, 0.75)],
    },
    K: { ...nickelBased, standard: [...nickelBased.standard, stretch(-200, 0, 2.2, 2, onlyIfOrdered)] },
    N: nickelBased,
    R: platinumBased,
    S: platinumBased,
    B: { standard: [stretch(870, 1700, 0, 0.5)], special: [stretch(870, 1700, 0, 0.25)] },
    C: { standard: [stretch(0, 2315, 4.4, 1)] },
  },
};
