import { z } from "zod";

/** What a provider's certificate states at each setpoint, in its own figures: never evaluated here, only copied. */

export const reportUnits = ["celsius", "microvolt"] as const;
export type ReportUnit = (typeof reportUnits)[number];
export const reportUnitLabels: Readonly<Record<ReportUnit, string>> = {
  celsius: "Deviation in °C",
  microvolt: "Emf in µV",
};
export const reportUnitSigns: Readonly<Record<ReportUnit, string>> = { celsius: "°C", microvolt: "µV" };

/** Its digits stay as they were typed: "0.50" says more than 0.5. */
const figure = z.string().regex(/^-?\d{1,7}(\.\d{1,6})?$/);

export const ReportResults = z.strictObject({
  unit: z.enum(reportUnits),
  points: z
    .array(
      z.strictObject({
        /** The setpoint of the order it answers, °C. */
        orderedCelsius: z.number(),
        nominalCelsius: figure,
        value: figure,
        expanded: figure,
        coverageFactor: figure,
      }),
    )
    .min(1),
});
export type ReportResults = z.output<typeof ReportResults>;

export const readReportResults = (stored: string): ReportResults => ReportResults.parse(JSON.parse(stored));
