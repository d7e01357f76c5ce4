import type { TemperatureUnit } from "./labels";

export type Setpoint = {
  /** As the customer states it; never converted, never rounded. */
  readonly typed: string;
  readonly celsius: number;
};

export type SetpointProblem = { readonly ok: false; readonly message: string };
export type SetpointsRead = { readonly ok: true; readonly setpoints: readonly Setpoint[] } | SetpointProblem;

const decimal = /^[+-]?\d{1,5}(\.\d{1,6})?$/;

/**
 * The temperature in °C that a decimal text in °C or °F names. Whole numbers throughout and one division at the end,
 * so that the answer is the nearest float64 to the true quotient: 600 °F is 2840/9 °C, not 32 times a rounded 0.5556.
 */
export const celsiusOf = (typed: string, unit: TemperatureUnit): number => {
  const negative = typed.startsWith("-");
  const [whole = "", fraction = ""] = typed.replace(/^[+-]/, "").split(".");
  const denominator = Number(`1${"0".repeat(fraction.length)}`);
  const magnitude = Number(whole + fraction);
  const numerator = negative && magnitude !== 0 ? -magnitude : magnitude;
  if (unit === "C") return numerator / denominator;
  return ((numerator - 32 * denominator) * 5) / (denominator * 9);
};

const problem = (message: string): SetpointProblem => ({ ok: false, message });

const tokensOf = (text: string): readonly string[] | SetpointProblem => {
  const tight = /\d,\d/.exec(text);
  // "300,500" may be two setpoints or one with a decimal comma: a guess could heat a sensor to the wrong temperature.
  if (tight)
    return problem(
      "A comma between two digits can be read in two ways. Write a decimal point, and a space or semicolon between setpoints.",
    );
  return text.split(/[\s;,]+/).filter((token) => token !== "");
};

/** Setpoints of one line, as typed in one field: separated by spaces, semicolons or new lines, ascending, each once. */
export const readSetpoints = (text: string, unit: TemperatureUnit): SetpointsRead => {
  const tokens = tokensOf(text.replaceAll("−", "-"));
  if ("ok" in tokens) return tokens;
  if (tokens.length > 30) return problem("More than 30 setpoints on one line. Split the line.");
  const setpoints: Setpoint[] = [];
  for (const token of tokens) {
    if (!decimal.test(token))
      return problem(
        `“${token.slice(0, 20)}” is not a temperature. Write numbers only; the unit is chosen beside them.`,
      );
    const setpoint = { typed: token, celsius: celsiusOf(token, unit) };
    const previous = setpoints.at(-1);
    if (previous && setpoint.celsius === previous.celsius) return problem(`${token} stands here twice.`);
    if (previous && setpoint.celsius < previous.celsius)
      return problem(`${token} follows ${previous.typed}. Write the setpoints from low to high.`);
    setpoints.push(setpoint);
  }
  return { ok: true, setpoints };
};
