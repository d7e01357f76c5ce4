import { z } from "zod";
import { requiredLine } from "../typed-text";

/** Emf with its junction's temperature, or a temperature that the instrument already gives. */
export const readingUnits = ["microvolt", "celsius"] as const;
export type ReadingUnit = (typeof readingUnits)[number];

const depth = z
  .number("Write the depth in mm.")
  .min(0, "From the mouth of the tube, not below nought.")
  .max(5000, "At most 5000 mm.");
const reading = z
  .number("Write the reading as a number.")
  .min(-100_000, "No thermocouple reads that.")
  .max(100_000, "No thermocouple reads that.");
const minutes = z
  .number("Write the minutes as a number.")
  .min(0, "From nought up.")
  .max(100_000, "At most 100 000.");

const shared = {
  unit: z.enum(readingUnits, "Say whether the readings are in µV or °C."),
  /** Of probe and monitor alike; counts for readings in µV. */
  junctionCelsius: z.number("Write the junction's temperature, such as 0.").min(-5).max(60, "At most 60 °C."),
};
const rows = <Row extends z.ZodType>(row: Row, message: string) =>
  z.array(row).min(1, message).max(5000, "At most 5000 rows.");

/** Profile and immersion: stop by stop, probe and monitor at the same moment; minutes where a clock was read. */
const Stop = z.strictObject({
  millimetre: depth,
  probe: reading,
  monitor: reading,
  minutes: minutes.nullable().default(null),
});

export const SurveyReadings = z.discriminatedUnion("kind", [
  z.strictObject({
    kind: z.literal("axial"),
    ...shared,
    rows: rows(Stop, "Write the stops, there and back."),
  }),
  z.strictObject({
    kind: z.literal("positions"),
    ...shared,
    centre: requiredLine("Name the position the others are compared with.", 40),
    rows: rows(
      z.strictObject({
        arrangement: z.int("Number the arrangements: 1, 2, 3.").min(1).max(1000),
        place: requiredLine("Name the position.", 40),
        sensor: requiredLine("Name the thermocouple.", 80),
        value: reading,
      }),
      "Write what each thermocouple read in each arrangement.",
    ),
  }),
  z.strictObject({
    kind: z.literal("stability"),
    ...shared,
    rows: rows(z.strictObject({ minutes, value: reading }), "Write the monitor's readings over time."),
  }),
  z.strictObject({
    kind: z.literal("immersion"),
    ...shared,
    limitCelsius: z.number("Write a number in °C.").positive("More than nought.").max(50, "At most 50 °C."),
    rows: rows(Stop, "Write the depths with their readings."),
  }),
]);
export type SurveyReadings = z.infer<typeof SurveyReadings>;
export type SurveyReadingsOf<K extends SurveyReadings["kind"]> = Extract<SurveyReadings, { kind: K }>;

/** Stored text read back. It was judged when it was written, so a misfit is a defect and throws. */
export const readSurveyReadings = (text: string): SurveyReadings => SurveyReadings.parse(JSON.parse(text));
