import { found, type Outcome, refused } from "../outcome";

export type PlatinumClass = "AA" | "A" | "B" | "C";
export type PlatinumElement = "wire" | "film";

type Rule = {
  readonly fixedCelsius: number;
  readonly fraction: number;
  readonly wire: readonly [number, number];
  readonly film: readonly [number, number];
};

/**
 * IEC 60751:2008, tolerance classes of thermometers with wire-wound and film elements. ALL FROM MEMORY: a
 * laboratory checks them against its own copy of the standard before it decides by them.
 */
const rules: Record<PlatinumClass, Rule> = {
  AA: { fixedCelsius: 0.1, fraction: 0.0017, wire: [-50, 250], film: [0, 150] },
  A: { fixedCelsius: 0.15, fraction: 0.002, wire: [-100, 450], film: [-30, 300] },
  B: { fixedCelsius: 0.3, fraction: 0.005, wire: [-196, 600], film: [-50, 500] },
  C: { fixedCelsius: 0.6, fraction: 0.01, wire: [-196, 600], film: [-50, 600] },
};

/**
 * Half-width in °C of the tolerance of an industrial platinum thermometer, fixed + fraction·|t|, t in °C: IEC
 * 60751:2008 (values and ranges from memory). Problems: `not-finite`; `outside-range` where the class has no
 * tolerance.
 */
export function platinumTolerance(
  toleranceClass: PlatinumClass,
  element: PlatinumElement,
  celsius: number,
): Outcome<number> {
  if (!Number.isFinite(celsius)) return refused("not-finite", `temperature ${celsius} is not a number`);
  const rule = rules[toleranceClass];
  const [from, to] = rule[element];
  if (celsius < from || celsius > to) {
    return refused(
      "outside-range",
      `IEC 60751 defines class ${toleranceClass} (${element}) from ${from} °C to ${to} °C, not at ${celsius} °C`,
    );
  }
  return found(rule.fixedCelsius + rule.fraction * Math.abs(celsius));
}
