import type { Outcome } from "@/lib/metrology/outcome";
import type { AxialProfile } from "@/lib/metrology/uniformity/axial-profile";
import { axialProfile } from "@/lib/metrology/uniformity/axial-profile";
import { type ExchangedPositions, exchangedPositions } from "@/lib/metrology/uniformity/exchanged-positions";
import { type ImmersionProfile, immersionProfile } from "@/lib/metrology/uniformity/immersion-profile";
import { type StabilityOverTime, stabilityOverTime } from "@/lib/metrology/uniformity/stability-over-time";
import { ok, type Result, refuse } from "../refusal";
import type { CharacterisationPlan } from "./characterisation-plan";
import { readingInCelsius, sizesAt } from "./reading-in-celsius";
import type { SurveyReadings, SurveyReadingsOf } from "./survey-readings";

export type SurveyEvaluation =
  | ({ readonly kind: "axial" } & AxialProfile)
  | ({ readonly kind: "positions"; readonly centre: string } & ExchangedPositions)
  | ({ readonly kind: "stability" } & StabilityOverTime)
  | ({ readonly kind: "immersion"; readonly limitCelsius: number } & ImmersionProfile);

/** A reading may be this far from the temperature of the survey before a channel, unit or row must be wrong. */
const FARTHEST_CELSIUS = 60;

type Fields = Record<string, string>;
type Typed = "probe" | "monitor";

/** Reads each figure of each row in °C, and refuses the rows that cannot be at the survey's temperature, each at its field. */
class Rows {
  readonly fields: Fields = {};
  constructor(
    private readonly plan: CharacterisationPlan,
    private readonly celsius: number,
    private readonly readings: SurveyReadings,
  ) {}

  read(value: number, by: Typed, row: number, column: string): number {
    const type = by === "probe" ? this.plan.probeType : this.plan.monitorType;
    const read = readingInCelsius(value, this.readings.unit, type, this.readings.junctionCelsius);
    const at = `readings.rows.${row}.${column}`;
    if (typeof read === "string") {
      this.fields[at] = read;
      return Number.NaN;
    }
    // At depths near the mouth an immersion survey is cold by intent.
    if (this.readings.kind !== "immersion" && Math.abs(read - this.celsius) > FARTHEST_CELSIUS)
      this.fields[at] =
        `That is ${read.toFixed(0)} °C in a survey at ${this.celsius} °C. Check the reading, its unit and the row.`;
    return read;
  }
}

const evaluateRows = (
  readings: SurveyReadings,
  plan: CharacterisationPlan,
  rows: Rows,
  sizes: { readonly inhomogeneityCelsius: number; readonly meterCelsius: number },
): Outcome<SurveyEvaluation> => {
  const { meterCelsius } = sizes;
  switch (readings.kind) {
    case "axial":
      return named(
        { kind: "axial" },
        axialProfile({
          readings: stopsOf(readings, rows),
          fromMillimetre: plan.fromMillimetre,
          toMillimetre: plan.toMillimetre,
          probeInhomogeneityCelsius: sizes.inhomogeneityCelsius,
          meterCelsius,
        }),
      );
    case "positions":
      return named(
        { kind: "positions", centre: readings.centre },
        exchangedPositions({
          readings: readings.rows.map(({ value, ...row }, i) => ({
            ...row,
            celsius: rows.read(value, "probe", i, "value"),
          })),
          centre: readings.centre,
          meterCelsius,
          statedRepeatability: null,
        }),
      );
    case "stability":
      return named(
        { kind: "stability" },
        stabilityOverTime({
          readings: readings.rows.map(({ minutes, value }, i) => ({
            minutes,
            celsius: rows.read(value, "monitor", i, "value"),
          })),
          windowMinutes: plan.windowMinutes,
          meterCelsius,
        }),
      );
    case "immersion":
      return named(
        { kind: "immersion", limitCelsius: readings.limitCelsius },
        immersionProfile({
          readings: stopsOf(readings, rows),
          limitCelsius: readings.limitCelsius,
          meterCelsius,
        }),
      );
  }
};

const named = <const Head extends object, Value extends object>(
  head: Head,
  outcome: Outcome<Value>,
): Outcome<Head & Value> => (outcome.ok ? { ok: true, value: { ...head, ...outcome.value } } : outcome);

const stopsOf = ({ rows: stops }: SurveyReadingsOf<"axial" | "immersion">, rows: Rows) => {
  // A clock counts only where it was read at every stop.
  const hasClock = stops.every(({ minutes }) => minutes !== null);
  return stops.map(({ millimetre, probe, monitor, minutes }, i) => ({
    millimetre,
    probeCelsius: rows.read(probe, "probe", i, "probe"),
    monitorCelsius: rows.read(monitor, "monitor", i, "monitor"),
    moment: hasClock ? (minutes as number) : i,
  }));
};

/** One survey as recorded, evaluated; what is wrong stands at the field it is wrong in. */
export const evaluateSurvey = (
  plan: CharacterisationPlan,
  celsius: number,
  readings: SurveyReadings,
): Result<SurveyEvaluation> => {
  if (!plan.temperatures.includes(celsius))
    return refuse("invalid", "Nothing was stored; what you typed is still here.", {
      celsius: `The plan has ${plan.temperatures.join(", ")} °C. Choose one of them, or plan anew.`,
    });
  const type = readings.kind === "stability" ? plan.monitorType : plan.probeType;
  const sizes = sizesAt(type, celsius, plan.probeInhomogeneityPercent, plan.meterMicrovolt);
  if (!sizes)
    return refuse(
      "rule",
      `Type ${type} is not defined at ${celsius} °C. Plan anew with another thermocouple.`,
    );
  const rows = new Rows(plan, celsius, readings);
  const outcome = evaluateRows(readings, plan, rows, sizes);
  if (Object.keys(rows.fields).length > 0)
    return refuse(
      "invalid",
      "Some readings need another look. Nothing was stored; what you typed is still here.",
      rows.fields,
    );
  if (!outcome.ok)
    return refuse(
      "invalid",
      "The readings say too little. Nothing was stored; what you typed is still here.",
      {
        "readings.rows": sentence(outcome.problem.message),
      },
    );
  return ok(outcome.value);
};

const sentence = (message: string): string => `${message.charAt(0).toUpperCase()}${message.slice(1)}.`;
