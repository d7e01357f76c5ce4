import type { EvaluatedPoint, MeasuredPoint } from "../evidence/evaluation";
import type { CountingRule } from "../order/options";
import { type Difference, differenceOf } from "./difference";
import { isSameSetpoint } from "./same-setpoint";

type Measurement = { readonly run: string; readonly points: readonly EvaluatedPoint[] };

export type WhichCounts = {
  readonly counts: "earlier" | "later";
  /** As the certificate says it. */
  readonly note: string;
  /** What a person has to look at; null = nothing. */
  readonly finding: string | null;
  readonly compared: readonly (Difference & { readonly nominalCelsius: number })[];
};

const measured = ({ points }: Measurement): readonly MeasuredPoint[] =>
  points.flatMap((point) => (point.state === "measured" ? [point] : []));

const compare = (earlier: Measurement, later: Measurement): WhichCounts["compared"] =>
  measured(later).flatMap((point) => {
    const before = measured(earlier).find((one) => isSameSetpoint(one.nominalCelsius, point.nominalCelsius));
    return before ? [{ nominalCelsius: point.nominalCelsius, ...differenceOf(before, point) }] : [];
  });

const degrees = (celsius: number): string => `${Number(celsius.toFixed(2))} °C`;
const both = (earlier: Measurement, later: Measurement): string =>
  `Measured twice, in run ${earlier.run} and in run ${later.run}; both are kept.`;

/** Why the earlier one cannot stand for the later, though the rule would let it; null = it can. */
const whyNot = (earlier: Measurement, later: Measurement, compared: WhichCounts["compared"]) => {
  const apart = compared.filter(({ agrees }) => !agrees);
  if (apart.length > 0)
    return `they differ by more than U of the difference at ${apart
      .map(
        ({ nominalCelsius, printed }) =>
          `${degrees(nominalCelsius)} (${printed.celsius} °C, U ${printed.expandedCelsius} °C)`,
      )
      .join(", ")}`;
  if (compared.length === 0) return "they have no measured setpoint in common";
  return compared.length < measured(later).length
    ? `run ${earlier.run} has no result at ${measured(later)
        .filter(({ nominalCelsius }) => !compared.some((one) => one.nominalCelsius === nominalCelsius))
        .map(({ nominalCelsius }) => degrees(nominalCelsius))
        .join(", ")}`
    : null;
};

/**
 * Which of two measurements of one sensor is reported, by the rule that was fixed before the second one. Both stay on
 * record, and the certificate says that there were two.
 */
export const decideWhichCounts = (
  rule: CountingRule,
  earlier: Measurement,
  later: Measurement,
): WhichCounts => {
  const compared = compare(earlier, later);
  if (rule === "later-counts")
    return {
      counts: "later",
      note: `${both(earlier, later)} By the rule fixed before the second measurement the later one is reported.`,
      finding: null,
      compared,
    };
  const why = whyNot(earlier, later, compared);
  if (why === null)
    return {
      counts: "earlier",
      note: `${both(earlier, later)} They agree within U of their difference; by the rule fixed before the second measurement the earlier one is reported.`,
      finding: null,
      compared,
    };
  return {
    counts: "later",
    note: `${both(earlier, later)} By the rule fixed before the second measurement the earlier one was to be reported if they agree: ${why}, so the later one is reported.`,
    finding: `The repeat does not confirm run ${earlier.run}: ${why}.`,
    compared,
  };
};
