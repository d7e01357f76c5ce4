import type { EvaluatedPoint, EvidenceFinding } from "../evidence/evaluation";
import { type PlaceOnJunction, sensorsSpokenOf } from "../gate/sensors-spoken-of";
import type { StoredRow } from "../gate/stored-outcome";
import { about } from "./about";
import { doubtWords, type InDoubt } from "./decide-not-in-doubt";
import { deviationPatterns } from "./deviation-patterns";
import type { ReviewedResult } from "./difference-cell";
import { dominatedBudgets } from "./dominated-budgets";
import { resultNameOf } from "./result-name";
import { type FindingPlaces, resultsOfFinding } from "./results-of-finding";
import type { ReviewException } from "./review-exception";

type SetAside = Pick<StoredRow, "code" | "subjects" | "reason" | "given">;

const conformityWeights = {
  fail: 90,
  "conditional-fail": 80,
  "not-decidable": 70,
  "conditional-pass": 50,
  "no-tolerance-defined": 10,
} as const;

const conformityTexts = {
  fail: "outside the tolerance",
  "conditional-fail": "outside the tolerance, within the guard band",
  "not-decidable": "conformity cannot be decided",
  "conditional-pass": "inside the tolerance, within the guard band",
  "no-tolerance-defined": "no tolerance is defined at this temperature",
} as const;

/** Share of the tolerance from which an error deserves a look even when it passes. The laboratory's habit, no source. */
const largeShareOfTolerance = 0.75;
/** Spread of the references against U of the temperature, from which a look is due. The laboratory's habit, no source. */
const largeSpreadOfReferences = 0.5;
const spreadWeight = 45;
/** Beyond U itself one of them is wrong: above whatever a single sensor shows. */
const spreadBeyondUWeight = 95;

const at = (point: EvaluatedPoint): string =>
  `${point.sensor} at ${Number(point.nominalCelsius.toFixed(2))} °C`;

const ofPoint = (point: EvaluatedPoint): ReviewException[] => {
  const subject = at(point);
  const here = { sensor: point.sensor, setpoint: point.setpoint };
  if (point.state !== "measured")
    return [
      {
        weight: 60,
        kind: "not-measured",
        subject,
        point: here,
        text: `${point.state === "invalid" ? "invalid" : "not reached"}: ${point.reason}`,
      },
    ];
  const found: ReviewException[] = [];
  const { conformity } = point;
  if (conformity.state !== "pass" && conformity.state !== "no-statement")
    found.push({
      weight: conformityWeights[conformity.state],
      kind: "conformity",
      subject,
      point: here,
      text: conformityTexts[conformity.state],
      ...(conformity.state === "no-tolerance-defined" ? { isNote: true as const } : {}),
    });
  const tolerance = conformity.tolerance?.celsius;
  if (
    tolerance &&
    conformity.state === "pass" &&
    Math.abs(point.errorCelsius) > largeShareOfTolerance * tolerance
  )
    found.push({
      weight: 40 + (10 * Math.abs(point.errorCelsius)) / tolerance,
      kind: "large-error",
      subject,
      point: here,
      text: `error uses ${Math.floor((100 * Math.abs(point.errorCelsius)) / tolerance)} % of the tolerance`,
    });
  return found;
};

/** What is the same beside each sensor is said once, and opened at each. */
const atSetpoint = (points: readonly EvaluatedPoint[], celsius: number) =>
  about(points.filter(({ nominalCelsius }) => nominalCelsius === celsius));

/** What the references' difference is held against in the window accepted at a setpoint. */
type Agreement = { readonly celsius: number; readonly limitCelsius: number };

const heldAgainst = (limit: number | undefined): string =>
  limit === undefined ? "" : `; at most ${limit.toFixed(3)} °C is allowed (U of the difference)`;

const ofReferences = (
  points: readonly EvaluatedPoint[],
  agreements: readonly Agreement[],
): ReviewException[] => {
  const seen = new Set<string>();
  return points.flatMap((point) => {
    if (point.state !== "measured" || seen.has(point.setpoint)) return [];
    seen.add(point.setpoint);
    const temperatures = point.references.map((reference) => reference.celsius);
    const spread = Math.max(...temperatures) - Math.min(...temperatures);
    if (temperatures.length < 2 || spread <= largeSpreadOfReferences * 2 * point.temperatureBudget.combined)
      return [];
    const limit = agreements.find(({ celsius }) => celsius === point.nominalCelsius)?.limitCelsius;
    const isBeyondU = spread > 2 * point.temperatureBudget.combined;
    return [
      {
        weight: isBeyondU ? spreadBeyondUWeight : spreadWeight,
        kind: "references-differ" as const,
        subject: `${Number(point.nominalCelsius.toFixed(2))} °C`,
        ...about(points.filter(({ setpoint }) => setpoint === point.setpoint)),
        text: `the references differ by ${spread.toFixed(2)} °C${isBeyondU ? ", more than U of the temperature" : ""}${heldAgainst(limit)}`,
      },
    ];
  });
};

/** Above whatever results show: nothing can be signed until it is settled. What was examined is still said. */
const ofDoubt = (one: InDoubt): ReviewException => ({
  weight: one.isExamined ? 62 : 130,
  kind: "in-doubt",
  subject: one.tag,
  text: one.isExamined
    ? `${doubtWords(one)}; what that does to results was examined there`
    : `${doubtWords(one)}, and nobody has examined what that does to these results: nothing can be signed`,
  href: one.report ? `/quality/${one.report}` : `/standards/${one.id}`,
});

const ofGate = (
  rows: readonly SetAside[],
  places: readonly PlaceOnJunction[],
  points: readonly EvaluatedPoint[],
): readonly ReviewException[] =>
  rows.flatMap(({ code, subjects, reason, given }) => {
    if (given === null) return [];
    const sensors = sensorsSpokenOf({ code, subjects }, places);
    return [
      {
        weight: 65,
        kind: "gate" as const,
        subject: subjects.length > 0 ? subjects.join(", ") : "Gate",
        text: `set aside at the gate: ${reason} Given: ${given}`,
        ...about(points.filter(({ sensor }) => sensors?.has(sensor) ?? true)),
      },
    ];
  });

/** What stands out in a run, the gravest first; ties keep the order of the points. */
export const reviewExceptions = (given: {
  readonly points: readonly EvaluatedPoint[];
  readonly findings: readonly EvidenceFinding[];
  readonly hasTypedReadings: boolean;
  /** Setpoints (°C) whose window the technician moved from the proposal. */
  readonly movedWindowsCelsius: readonly number[];
  /** One for each accepted window. */
  readonly agreements?: readonly Agreement[];
  /** Set aside at the gate, with the reason that was given. */
  readonly setAside?: readonly SetAside[];
  /** Where each thing of the load was, for what the gate says of places, channels and junctions. */
  readonly places?: readonly PlaceOnJunction[];
  /** What findings point at; without it, each speaks of all results. */
  readonly findingPlaces?: FindingPlaces;
  /** The measured points beside the last result of each sensor, where there is one. */
  readonly reviewed?: readonly ReviewedResult[];
  /** Moments whose room was recorded more than once, and the page where each record and reason stands. */
  readonly roomAgain?: readonly {
    readonly moment: string;
    readonly times: number;
    readonly reason: string;
    readonly href: string;
  }[];
  /** What the run stands on that is in doubt now. */
  readonly inDoubt?: readonly InDoubt[];
}): readonly ReviewException[] =>
  [
    ...(given.inDoubt ?? []).map(ofDoubt),
    ...deviationPatterns(given.reviewed ?? []),
    ...given.findings.map((finding) => ({
      weight: 75,
      kind: "finding" as const,
      subject: `Finding: ${finding.code.replaceAll("-", " ")}`,
      text: finding.message,
      ...about(
        given.findingPlaces
          ? resultsOfFinding(finding, given.findingPlaces, given.points.map(resultNameOf))
          : given.points,
      ),
    })),
    ...given.points.flatMap(ofPoint),
    ...ofReferences(given.points, given.agreements ?? []),
    ...ofGate(given.setAside ?? [], given.places ?? [], given.points),
    ...given.movedWindowsCelsius.map((celsius) => ({
      weight: 30,
      kind: "window" as const,
      subject: `${Number(celsius.toFixed(2))} °C`,
      text: "the stability window was moved by hand",
      ...atSetpoint(given.points, celsius),
    })),
    ...(given.roomAgain ?? []).map(({ moment, times, reason, href }) => ({
      weight: 25,
      kind: "room" as const,
      subject: "Room",
      text: `the room at the ${moment} was recorded ${times} times; the last counts${reason === "" ? "" : `: ${reason}`}`,
      href,
    })),
    ...dominatedBudgets(given.points),
    ...(given.hasTypedReadings
      ? [
          {
            weight: 20,
            kind: "typed" as const,
            subject: "Readings",
            text: "some readings were typed by hand",
          },
        ]
      : []),
  ].sort((left, right) => right.weight - left.weight);
