import { z } from "zod";
import { printedText } from "../certificate/printable/printed-text";
import { optionalDecimal, optionalText, wholeNumber } from "../order/field";
import { seenWhole } from "../typed-text";
import { BuildDraft, buildOf } from "./build-draft";
import { labelLayoutNames } from "./label-layouts";
import { conditions, groundings, polarities, typeChecks } from "./labels";
import { readSerials } from "./serials";

const ohmMessage = "Write the loop resistance in Ω, a number with a decimal point, or leave it empty.";
const megaohmMessage = "Write the insulation in MΩ, a number with a decimal point, or leave it empty.";
const conditionNote = optionalText(400).superRefine(printedText);

/** What one sensor of the paste differs in; empty fields take what stands above for all. */
export const SensorChecks = z.object({
  loopResistanceOhm: optionalDecimal(0, 1_000_000, ohmMessage),
  insulationMegaohm: optionalDecimal(0, 1_000_000_000, megaohmMessage),
  polarity: z.enum(["", ...polarities]).default(""),
  typeCheck: z.enum(["", ...typeChecks]).default(""),
  condition: z.enum(["", ...conditions]).default(""),
  conditionNote,
  grounding: z.enum(["", ...groundings]).default(""),
  end: BuildDraft.shape.end,
});

export const ReceiveSensorsInput = z
  .object({
    orderNumber: z.string(),
    /** Which line of the order, counted from 1. */
    position: wholeNumber(1, 1000, "Choose the order line."),
    receivedOn: z.iso.date("Write the day as YYYY-MM-DD."),
    serials: z
      .string()
      .max(40_000, "Too much at once. Paste at most 200 serial numbers.")
      .transform((text, context) => {
        const read = readSerials(text);
        if (read.ok) return read.serials;
        context.addIssue(read.message);
        return z.NEVER;
      }),
    condition: z.enum(conditions, "Say in which condition they came."),
    conditionNote,
    loopResistanceOhm: optionalDecimal(0, 1_000_000, ohmMessage),
    insulationMegaohm: optionalDecimal(0, 1_000_000_000, megaohmMessage),
    polarity: z.enum(polarities, "Choose what the polarity check showed."),
    typeCheck: z.enum(typeChecks, "Choose what the type check showed."),
    grounding: z.enum(groundings).default("not-checked"),
    /** How they are made and what they have seen: the same for all of the paste; left empty: not stated. */
    ...BuildDraft.shape,
    /** In the order of the serials. */
    each: z.array(SensorChecks).max(200).default([]),
  })
  .transform((paste, context) => {
    const sensors = paste.serials.map((pasted, index) => {
      const own = paste.each[index];
      const sensor = {
        ...pasted,
        condition: own?.condition || paste.condition,
        conditionNote: own?.conditionNote || paste.conditionNote,
        loopResistanceOhm: own?.loopResistanceOhm ?? paste.loopResistanceOhm,
        insulationMegaohm: own?.insulationMegaohm ?? paste.insulationMegaohm,
        polarity: own?.polarity || paste.polarity,
        typeCheck: own?.typeCheck || paste.typeCheck,
        grounding: own?.grounding || paste.grounding,
        build: buildOf(own?.end ? { ...paste, end: own.end } : paste),
      };
      if (sensor.condition === "deviates" && sensor.conditionNote === "")
        context.addIssue({
          code: "custom",
          path: own?.condition ? ["each", index, "conditionNote"] : ["conditionNote"],
          message: "Write what deviates or is damaged.",
        });
      return sensor;
    });
    const { orderNumber, position, receivedOn } = paste;
    return { orderNumber, position, receivedOn, sensors };
  });
export type SensorAtIntake = z.output<typeof ReceiveSensorsInput>["sensors"][number];
export const mostSensorsAtOnce = 200;

export const StateBuildInput = BuildDraft.extend({
  tag: z.string().min(1),
  version: wholeNumber(1, 1_000_000, "The form has lost its version. Reload the page."),
  reason: z
    .string()
    .trim()
    .min(5, "Say what was looked at or changed: whoever reads this later was not there.")
    .max(400, "At most 400 characters.")
    .superRefine(seenWhole),
});

export const CollectSensorInput = z.object({
  tag: z.string(),
  handedOver: z.enum(["in-person", "carrier"], "Say how it was handed over."),
  /** Asked for when the sensor leaves without a certificate. */
  reason: optionalText(400),
});

export const PrintLabelsInput = z.object({
  orderNumber: z.string(),
  /** One sensor of the order, or empty for all. */
  tag: z.string().default(""),
  layout: z.enum(labelLayoutNames, "Choose what the labels are printed on.").default("roll-50x25"),
  /** The first free place of a sheet that was begun, counted row by row from 1. */
  startAt: wholeNumber(1, 100, "Write the first free label of the sheet, from 1.").default(1),
  /** Where the platform is reached from outside, e.g. https://lab.example: what the code on the label leads to. */
  publicOrigin: z.url(),
});
