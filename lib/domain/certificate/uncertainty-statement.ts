import type { EvaluatedCoverage, MeasuredPoint } from "../evidence/evaluation";

type Covered = Pick<MeasuredPoint, "nominalCelsius" | "coverage" | "scope">;
type WriteTemperature = (celsius: number) => string;

const multiplied =
  "U is the expanded uncertainty: the combined standard uncertainty multiplied by the coverage factor k printed in the " +
  "same row";
/** Rows may differ in k and its method; each method is then named with its rows. */
const methods: Readonly<Record<EvaluatedCoverage["method"], string>> = {
  student: "k is that of Student's t with the effective degrees of freedom of the row",
  "one-dominant-rectangle":
    "one rectangularly distributed contribution dominates, and k is that of a rectangular distribution (EA-4/02, S9)",
  "two-dominant-rectangles":
    "two rectangularly distributed contributions dominate, and k is that of a trapezoidal distribution (EA-4/02, S10)",
  "monte-carlo":
    "U is half the coverage interval from the propagation of distributions by Monte Carlo (JCGM 101:2008), and k is U " +
    "divided by the combined standard uncertainty",
};
const basis =
  "It was evaluated according to EA-4/02. It includes the thermocouple's behaviour during this calibration, not its " +
  "drift or transport afterwards.";

const percent = (probability: number): string => `${Number((probability * 100).toFixed(2))} %`;
const isRaised = ({ scope }: Covered): boolean => scope.isRaised;

/** One text for each method and probability, with the points it holds for, in the order of the results. */
const byMethod = (points: readonly Covered[]): ReadonlyMap<string, readonly Covered[]> => {
  const groups = new Map<string, Covered[]>();
  for (const point of points) {
    const { method, probability } = point.coverage;
    const text = `${methods[method]}; coverage probability ${percent(probability)}`;
    groups.set(text, [...(groups.get(text) ?? []), point]);
  }
  return groups;
};

/**
 * 7.8.4.1 a: what U is and what it covers, by the method of the points. EA-4/02, clause 6 (number from memory); JCGM
 * 100:2008, annex G; for the capability ILAC-P14:09/2020, 5.
 */
export const uncertaintyStatement = (points: readonly Covered[], at: WriteTemperature): string => {
  const listed = (some: readonly Covered[]) =>
    `At ${some.map(({ nominalCelsius }) => at(nominalCelsius)).join(", ")}`;
  const raised = points.filter(isRaised);
  const groups = [...byMethod(points)];
  const isStudentOnly = points.every(({ coverage }) => coverage.method === "student");
  const covers = isStudentOnly
    ? ", which for the effective degrees of freedom of that row gives a coverage probability of approximately 95 % (95.45 %)."
    : `. ${groups.map(([text, some]) => `${groups.length === 1 ? "In every row" : listed(some)}: ${text}.`).join(" ")}`;
  const capability =
    raised.length === 0
      ? ""
      : ` ${listed(raised)}: U as computed is smaller than the laboratory's calibration and measurement capability, ` +
        "which is stated in its place (ILAC-P14:09/2020, 5); it is not the product with the k of that row, and covers at " +
        "least as much.";
  return `${multiplied}${covers}${capability} ${basis}`;
};
