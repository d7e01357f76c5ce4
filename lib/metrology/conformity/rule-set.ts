/**
 * Tolerances as data, in versions: a laboratory reads a standard in one edition, and a verdict names it. What the rules
 * mean is in `tolerance-in`; the sets are `iec-60584-1`, `astm-e230` and what `user-limits` builds.
 */

/**
 * One stretch of a class. Tolerance = max(fixed, base + percent/100·|t − origin|), evaluated over the whole stretch and
 * never split at the place where the two parts meet: published tables round that join (at 333 °C 0.75 % is 2.4975 °C,
 * and class 2 is 2.5 °C).
 */
export type ToleranceRule = {
  readonly fromCelsius: number;
  readonly toCelsius: number;
  /** The fixed part, in `unit`; 0 where there is none. */
  readonly fixed: number;
  /** The part that grows, in percent of the distance of t from `origin`; 0 where there is none. */
  readonly percent: number;
  /**
   * Unit of `fixed`, and the temperature scale that the percentage is taken of. It matters: 0.4 % of a temperature in °F
   * is 0.07 °C more than 0.4 % of the same temperature in °C.
   */
  readonly unit: "°C" | "°F";
  /** Where the percentage starts from, in `unit`: 0 but for class 1 of R and S, which starts at 1100 °C. */
  readonly origin: number;
  /** What the growing part starts at, in `unit`: 0 but for class 1 of R and S, 1 °C. */
  readonly base: number;
  /** What a person must know who uses it, e.g. "guide only". */
  readonly note?: string;
};

/** The stretches of one class; where two meet, the smaller tolerance holds, so that no verdict is too good. */
export type ToleranceClassRules = readonly ToleranceRule[];

export type ToleranceRuleSet = {
  readonly id: string;
  /** As it stands on a certificate, with its edition: "IEC 60584-1:2013". */
  readonly title: string;
  readonly edition: string;
  /** Where the numbers were read, and how sure they are. */
  readonly source: string;
  /** By thermocouple type, then by class; a type or class that is absent has no tolerance there. */
  readonly types: Readonly<Record<string, Readonly<Record<string, ToleranceClassRules>>>>;
};
