import { type ExpectedDrift, expectedDrift } from "@/lib/metrology/standard/expected-drift";
import type { Reference } from "./bench";
import { type EvidenceOutcome, got, missing } from "./evidence-outcome";
import type { Evidence } from "./schema";
import type { UncertaintyInput } from "./uncertainty-input";

export type ReferenceDrift = {
  /** Expected since the calibration and taken off the temperature, °C; 0 where nothing is corrected. */
  readonly correctedCelsius: number;
  readonly input: UncertaintyInput;
};

const DAYS_PER_YEAR = 365.25;
const MILLISECONDS_PER_DAY = 86_400_000;

/** The drift of a reference as stated, or from its rates, the days since its certificate and its hours of use. */
export function referenceDrift(
  item: Reference,
  path: string,
  evidence: Pick<Evidence, "scans">,
): EvidenceOutcome<ReferenceDrift> {
  const { drift, calibration } = item;
  if (drift.kind !== "by-use") return got({ correctedCelsius: 0, input: drift });
  const day = evidence.scans.startedAt?.slice(0, 10);
  if (day === undefined) {
    return missing("scans.startedAt", `The drift of ${item.id} is stated by time: say when the run began.`);
  }
  const days = (Date.parse(day) - Date.parse(calibration.performedOn)) / MILLISECONDS_PER_DAY;
  const expected = expectedDrift(
    {
      perYear: { rate: drift.perYear.rateCelsius, halfWidth: drift.perYear.halfWidthCelsius },
      perHour: { rate: drift.perHour.rateCelsius, halfWidth: drift.perHour.halfWidthCelsius },
    },
    { years: days / DAYS_PER_YEAR, hours: drift.hours },
  );
  if (!expected.ok) return missing(`${path}.drift`, `${expected.problem.message}.`);
  return got({
    correctedCelsius: drift.isCorrected ? expected.value.expected : 0,
    input: lineOf(
      expected.value,
      drift.isCorrected,
      `${drift.source}; ${days} days, ${drift.hours} h of use`,
    ),
  });
}

function lineOf(drift: ExpectedDrift, isCorrected: boolean, source: string): UncertaintyInput {
  const halfWidth = isCorrected ? drift.halfWidth : drift.uncorrectedHalfWidth;
  return { kind: "rectangular", halfWidth, unit: "celsius", source };
}
