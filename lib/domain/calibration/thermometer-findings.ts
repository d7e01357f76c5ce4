import { z } from "zod";
import type { FixedPoint } from "@/lib/metrology/platinum/fixed-point";
import { sprtCalibration } from "@/lib/metrology/platinum/sprt-calibration";
import { type SprtSection, sprtSubranges } from "@/lib/metrology/platinum/sprt-subrange";
import { coverageFactor, expanded, figure, note } from "./certificate-figures";

export const sprtSections = Object.keys(sprtSubranges) as [SprtSection, ...SprtSection[]];
export const fixedPoints = [
  "Ar",
  "Hg",
  "Ga",
  "In",
  "Sn",
  "Zn",
  "Al",
  "Ag",
] as const satisfies readonly FixedPoint[];

const ohm = z
  .number("Write the resistance in Ω, such as 100.0123.")
  .positive("More than nought.")
  .max(10_000);
const ratio = z.number("Write the ratio W, such as 1.11814.").positive("More than nought.").max(10);

/** R(t) = R0·(1 + At + Bt² + C(t − 100)t³), IEC 60751. */
const CallendarVanDusen = z.strictObject({
  form: z.literal("callendar-van-dusen"),
  zeroOhm: ohm,
  a: figure.positive("A is about 3.9e-3."),
  b: figure,
  c: figure.default(0),
});

/** W at fixed points, ITS-90 section 3.3; R at the triple point of water is of the same calibration. */
const Sprt = z.strictObject({
  form: z.literal("sprt"),
  section: z.enum(sprtSections, "Choose the subrange of the ITS-90."),
  waterOhm: ohm,
  ratios: z.partialRecord(z.enum(fixedPoints), ratio),
});

/** What the certificate of a platinum thermometer found; the bridge that reads it is an instrument of its own. */
export const ThermometerFindings = z
  .strictObject({
    kind: z.literal("thermometer"),
    curve: z.discriminatedUnion("form", [CallendarVanDusen, Sprt], "Choose what the certificate prints."),
    fromCelsius: figure.min(-200).max(962),
    toCelsius: figure.min(-200).max(962),
    /** Largest over the range, °C. */
    expandedCelsius: expanded,
    coverageFactor,
    note,
  })
  .superRefine(({ curve, fromCelsius, toCelsius }, context) => {
    const say = (path: string[], message: string) => context.addIssue({ code: "custom", path, message });
    if (fromCelsius >= toCelsius) say(["toCelsius"], "Must lie above where it begins.");
    if (curve.form !== "sprt") return;
    const calibration = sprtCalibration(curve.section, curve.ratios);
    if (!calibration.ok) say(["curve", "ratios"], `${calibration.problem.message}.`);
  });
