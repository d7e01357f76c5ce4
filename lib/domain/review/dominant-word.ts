import type { MeasuredPoint } from "../evidence/evaluation";

/** By key without its side ("@sensor"), else by its first part; what a reviewer calls the source, in a word. */
const words: Readonly<Record<string, string>> = {
  reference: "reference",
  voltmeter: "voltmeter",
  scanner: "scanner",
  heater: "heater",
  junction: "junction",
  furnace: "furnace",
  "furnace.stability": "stability",
  "sensor.repeatability": "scatter",
  "sensor.lead": "lead",
  "sensor.inhomogeneity": "wire",
  "sensor.immersion": "immersion",
  "sensor.shunting": "shunting",
  "sensor.hysteresis": "hysteresis",
};

/** The largest line of a budget, so short that it stands in a cell: "wire 62 %", of u². */
export const dominantWord = ({ dominant, temperatureBudget, emfBudget }: MeasuredPoint): string => {
  const [key = dominant] = dominant.split("@");
  const [family = key] = key.split(".");
  const word = words[key] ?? words[family] ?? key;
  const line = [...temperatureBudget.contributions, ...emfBudget.contributions].find(
    (one) => one.key === dominant,
  );
  return line ? `${word} ${Math.round(100 * line.share)} %` : word;
};
