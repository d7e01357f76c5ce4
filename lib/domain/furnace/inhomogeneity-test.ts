import { z } from "zod";
import { emf } from "@/lib/metrology/thermocouple/emf";
import { referenceFunctions, type ThermocoupleType } from "@/lib/metrology/thermocouple/reference-functions";
import { seebeck } from "@/lib/metrology/thermocouple/seebeck";
import { type Inhomogeneity, inhomogeneityOfScan } from "@/lib/metrology/uniformity/inhomogeneity-of-scan";
import { inhomogeneityOfTwoImmersions } from "@/lib/metrology/uniformity/inhomogeneity-of-two-immersions";
import { widenedHalfWidth } from "@/lib/metrology/uniformity/widened-half-width";
import type { UncertaintyInput } from "../evidence/uncertainty-input";
import { ok, type Result, refuse } from "../refusal";
import { requiredLine } from "../typed-text";

const depth = z.number("Write the depth in mm.").min(0, "Not below nought.").max(5000, "At most 5000 mm.");
const microvolt = z.number("Write the emf in µV.").min(-100_000).max(100_000, "No thermocouple gives that.");

/** A sensor moved through a gradient, and what it gave at each depth. */
export const InhomogeneityReadings = z.strictObject({
  method: z.enum(["scan", "two-immersions"], "Choose how it was moved."),
  /** Of bath or furnace, and of the air or bath outside it: the two ends of the gradient. */
  celsius: z.number("Write a number in °C.").min(30, "Warmer than the room.").max(1800, "At most 1800 °C."),
  outsideCelsius: z.number("Write a number in °C.").min(-100).max(100, "At most 100 °C."),
  /** u of one reading against another. */
  meterMicrovolt: z.number("Write a number in µV.").min(0, "Without sign.").max(100, "At most 100 µV."),
  medium: requiredLine("Say in what, such as salt bath or furnace FUR-01.", 120),
  rows: z
    .array(
      z.strictObject({
        millimetre: depth,
        microvolt,
        /** The bath's own thermometer at the moment of the reading. */
        monitorCelsius: z.number("Write the bath's temperature.").min(-100).max(1800),
      }),
    )
    .min(2, "At least two depths.")
    .max(1000, "At most 1000 rows."),
});
export type InhomogeneityReadings = z.infer<typeof InhomogeneityReadings>;

/** Stored text read back. It was judged when it was written, so a misfit is a defect and throws. */
export const readInhomogeneityReadings = (text: string): InhomogeneityReadings =>
  InhomogeneityReadings.parse(JSON.parse(text));

export type InhomogeneityEvaluation = Inhomogeneity & { readonly method: InhomogeneityReadings["method"] };

/** A junction may stand in ice or in the room, so an emf may lie well below the table's; a third off is another type or unit. */
const wrongRows = (
  { celsius, rows }: InhomogeneityReadings,
  tableMicrovolt: number,
  type: ThermocoupleType,
): Record<string, string> => {
  const fields: Record<string, string> = {};
  for (const [index, row] of rows.entries()) {
    if (Math.abs(row.monitorCelsius - celsius) > 10)
      fields[`readings.rows.${index}.monitorCelsius`] =
        `More than 10 °C from ${celsius} °C. Check the reading.`;
    if (Math.abs(row.microvolt - tableMicrovolt) > Math.abs(tableMicrovolt) / 3)
      fields[`readings.rows.${index}.microvolt`] =
        `Type ${type} gives about ${tableMicrovolt.toFixed(0)} µV at ${celsius} °C. Check the reading and its unit.`;
  }
  return fields;
};

/** The test evaluated for a thermocouple of a type, or what is wrong with it. */
export const evaluateInhomogeneity = (
  type: ThermocoupleType,
  readings: InhomogeneityReadings,
): Result<InhomogeneityEvaluation> => {
  const reference = referenceFunctions[type];
  const [hot, cold, slope] = [
    emf(reference, readings.celsius),
    emf(reference, readings.outsideCelsius),
    seebeck(reference, readings.celsius),
  ];
  if (!hot.ok || !cold.ok || !slope.ok)
    return refuse("invalid", "Nothing was stored; what you typed is still here.", {
      "readings.celsius": `Type ${type} is not defined between ${readings.outsideCelsius} and ${readings.celsius} °C.`,
    });
  const fields = wrongRows(readings, hot.value, type);
  if (Object.keys(fields).length > 0)
    return refuse(
      "invalid",
      "Some readings need another look. Nothing was stored; what you typed is still here.",
      fields,
    );
  const shared = {
    spanMicrovolt: hot.value - cold.value,
    meterMicrovolt: readings.meterMicrovolt,
  };
  const [first, second] = readings.rows;
  const outcome =
    readings.method === "two-immersions" && first && second
      ? inhomogeneityOfTwoImmersions({
          first,
          // What the bath did between the two depths is taken off.
          second: {
            millimetre: second.millimetre,
            microvolt: second.microvolt - slope.value * (second.monitorCelsius - first.monitorCelsius),
          },
          ...shared,
        })
      : inhomogeneityOfScan({ readings: readings.rows, microvoltPerCelsius: slope.value, ...shared });
  if (!outcome.ok)
    return refuse(
      "invalid",
      "The readings say too little. Nothing was stored; what you typed is still here.",
      {
        "readings.rows": `${outcome.problem.message.charAt(0).toUpperCase()}${outcome.problem.message.slice(1)}.`,
      },
    );
  return ok({ ...outcome.value, method: readings.method });
};

/** An accepted test, as a budget takes it. */
export type MeasuredInhomogeneity = {
  readonly performedOn: string;
  readonly celsius: number;
  readonly evaluation: Pick<
    InhomogeneityEvaluation,
    "method" | "relativeHalfWidth" | "standardUncertainty" | "scannedMillimetre"
  >;
};

const methods = { scan: "moved through the gradient over", "two-immersions": "two immersions" } as const;

/** The line of the budget that a measured spread gives, in place of the assumed rule: relative, so it scales to the emf at calibration. */
export const inhomogeneityInput = ({
  performedOn,
  celsius,
  evaluation,
}: MeasuredInhomogeneity): UncertaintyInput => {
  const { method, relativeHalfWidth, standardUncertainty, scannedMillimetre } = evaluation;
  const halfWidth = widenedHalfWidth(relativeHalfWidth, standardUncertainty);
  const source = `inhomogeneity test of ${performedOn} at ${celsius} °C, ${methods[method]} ${scannedMillimetre} mm${method === "scan" ? "" : " apart"}`;
  return halfWidth === 0
    ? { kind: "zero", reason: `${source}: no spread found` }
    : { kind: "rectangular", halfWidth, unit: "relative", source };
};
