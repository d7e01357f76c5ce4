import { z } from "zod";
import { day, lines, requiredLine, requiredLines, rowVersion } from "../typed-text";
import { Bores } from "./bores";
import { CharacterisationPlan } from "./characterisation-plan";
import { InhomogeneityReadings } from "./inhomogeneity-test";
import { SurveyReadings } from "./survey-readings";
import { configurationKinds } from "./types";

const millimetre = z
  .number("Write a number in millimetres.")
  .positive("More than nought.")
  .max(5000, "In millimetres, at most 5000.");
const celsius = z.number("Write a number in °C.").min(-100).max(1800, "At most 1800 °C.");

const rate = z
  .number("Write a number in °C per hour.")
  .positive("More than nought.")
  .max(6000, "At most 6000.");

const Described = z.strictObject({
  name: requiredLine("Write what people call it.", 120),
  maker: requiredLine("Write who made it.", 120),
  serial: requiredLine("Write its serial number.", 120),
  minimumCelsius: celsius,
  maximumCelsius: celsius,
  boreMillimetre: millimetre,
  lengthMillimetre: millimetre,
  zones: z.int("Write a whole number.").min(1, "At least one.").max(12, "At most 12.").default(1),
  /** Depth at which it was found to be most uniform. */
  bestImmersionMillimetre: millimetre.nullable().default(null),
  workingLengthMillimetre: millimetre.nullable().default(null),
  /** What the controller is set to for a temperature at the working depth. */
  controllerSetpoints: z
    .array(z.strictObject({ celsius, controllerCelsius: celsius }))
    .max(40, "At most 40.")
    .refine(
      (all) => new Set(all.map((one) => one.celsius)).size === all.length,
      "A temperature stands twice.",
    )
    .default([]),
  rampUpCelsiusPerHour: rate.nullable().default(null),
  rampDownCelsiusPerHour: rate.nullable().default(null),
});

type Sizes = Pick<
  z.infer<typeof Described>,
  | "minimumCelsius"
  | "maximumCelsius"
  | "lengthMillimetre"
  | "bestImmersionMillimetre"
  | "workingLengthMillimetre"
  | "controllerSetpoints"
>;

/** What one field says of another, each at its field. */
const judge = (furnace: Sizes, context: z.RefinementCtx): void => {
  const say = (path: PropertyKey[], message: string) => context.addIssue({ code: "custom", path, message });
  if (furnace.minimumCelsius >= furnace.maximumCelsius)
    say(["maximumCelsius"], "The highest temperature lies above the lowest.");
  const within = `The tube is ${furnace.lengthMillimetre} mm long.`;
  if ((furnace.bestImmersionMillimetre ?? 0) > furnace.lengthMillimetre)
    say(["bestImmersionMillimetre"], within);
  if ((furnace.workingLengthMillimetre ?? 0) > furnace.lengthMillimetre)
    say(["workingLengthMillimetre"], within);
  for (const [index, { celsius: at }] of furnace.controllerSetpoints.entries())
    if (at < furnace.minimumCelsius || at > furnace.maximumCelsius)
      say(
        ["controllerSetpoints", index, "celsius"],
        `The furnace works from ${furnace.minimumCelsius} to ${furnace.maximumCelsius} °C.`,
      );
};

export const FurnaceInput = Described.extend({
  tag: requiredLine("Write the tag that stands on it, such as FUR-01.", 40),
}).superRefine(judge);

export const FurnaceChange = Described.extend({ id: z.uuid(), version: rowVersion }).superRefine(judge);

export const ConfigurationInput = z.strictObject({
  furnaceId: z.uuid(),
  name: requiredLine("Write a name, such as Alumina block, 8 bores.", 120),
  kind: z.enum(configurationKinds, "Choose one."),
  places: z.int("Write a whole number.").min(1).max(60, "At most 60 places."),
  immersionMillimetre: millimetre,
  /** Of a block. */
  bores: Bores.default([]),
  /** Of a bare tube: the thickest bundle that is characterised. */
  bundleDiameterMillimetre: millimetre.nullable().default(null),
});

export const PlanCharacterisationInput = z.strictObject({
  configurationId: z.uuid(),
  plan: CharacterisationPlan,
});

/** Typed row by row, or a file of the same columns: never both. */
export const RecordSurveyInput = z.strictObject({
  characterisationRunId: z.uuid(),
  celsius: z.number("Choose the temperature."),
  measuredOn: day,
  readings: SurveyReadings.nullable(),
  file: z
    .strictObject({
      kind: z.enum(["axial", "positions", "stability", "immersion"]),
      fileName: z.string().max(200),
      bytes: z.custom<Uint8Array>((value) => value instanceof Uint8Array, "The file did not arrive."),
      junctionCelsius: z
        .number("Write the junction\u2019s temperature, such as 0.")
        .min(-5)
        .max(60, "At most 60 °C."),
      centre: z.string().trim().max(40).default(""),
      limitCelsius: z.number().positive().max(50).nullable().default(null),
    })
    .nullable(),
});

export const SubmitCharacterisationInput = z.strictObject({
  characterisationRunId: z.uuid(),
  validUntil: day,
});

const decision = z
  .strictObject({
    id: z.uuid(),
    decision: z.enum(["accepted", "returned"], "Choose one."),
    reason: lines(600).default(""),
  })
  .refine((input) => input.decision === "accepted" || input.reason !== "", {
    path: ["reason"],
    message: "Say what is to be done before it can be accepted.",
  });
export const DecideCharacterisationInput = decision;
export const DecideInhomogeneityInput = decision;

export const RecordInhomogeneityInput = z.strictObject({
  /** Of a sensor or of a piece of equipment, as it stands on the thing. */
  tag: requiredLine("Write the tag of the sensor or of the reference.", 40),
  performedOn: day,
  readings: InhomogeneityReadings,
});

export const CharacterisationInput = z
  .strictObject({
    configurationId: z.uuid(),
    performedOn: day,
    validUntil: day,
    uniformityHalfWidthCelsius: z.number("Write a number in °C.").nonnegative("Without sign.").max(50),
    statement: requiredLines(
      "Say over which length, at which temperatures, and that it is the half-width: without these the figure means nothing.",
      600,
    ),
  })
  .refine((input) => input.validUntil > input.performedOn, {
    path: ["validUntil"],
    message: "It holds until a day after it was measured.",
  });
