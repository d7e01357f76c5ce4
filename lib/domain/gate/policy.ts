import { z } from "zod";
import { gateCodes } from "./codes";
import { neverOverridable } from "./never-overridable";

const source = z.string().trim().min(3, "Say where this figure comes from.").max(300);
const limit = z.strictObject({ value: z.number().positive(), source });
const letters = z.array(z.string().min(1)).min(1);

/** Highest temperature by diameter; between two, the thinner one's counts. */
const ByDiameter = z.strictObject({
  rows: z.array(
    z.strictObject({
      types: letters,
      diameterMillimetre: z.number().positive(),
      maximumCelsius: z.number(),
    }),
  ),
  source,
});
export type ByDiameter = z.output<typeof ByDiameter>;

/** `fumes`: what it gives off above its limit; empty = it only fails. */
const OfMaterial = z.strictObject({
  maximumCelsius: z.number(),
  fumes: z.string().max(200).default(""),
  source,
});

const Override = z.strictObject({
  code: z.enum(gateCodes),
  by: z.array(z.enum(["technician", "signatory", "quality-manager"])).min(1),
  /** A deviation from the method the certificate has to name, ISO/IEC 17025:2017, 7.8.2.1 n. */
  reachesCertificate: z.boolean(),
});
export type OverrideRule = z.output<typeof Override>;

/** The room during a run, ISO/IEC 17025:2017, 6.3.3. Outside: a warning, and a deviation the certificate names. */
export const RoomLimits = z
  .strictObject({
    ...{ fromCelsius: z.number(), toCelsius: z.number() },
    ...{ fromPercent: z.number().min(0), toPercent: z.number().max(100) },
    source,
  })
  .refine(
    ({ fromCelsius, fromPercent, toCelsius, toPercent }) =>
      fromCelsius < toCelsius && fromPercent < toPercent,
    "Each range ends above where it begins.",
  );
export type RoomLimits = z.output<typeof RoomLimits>;

/** What the laboratory asks of a run before it starts: its own figures, each with where it comes from. */
export const GatePolicy = z
  .strictObject({
    title: z.string().min(1).max(120),
    warmUpHours: limit,
    shortedZeroMicrovolt: limit,
    nobleChannelMicrovolt: limit,
    baseChannelMicrovolt: limit,
    voltagePointMicrovolt: limit,
    junctionCelsius: limit,
    tipRiseMicrovolt: limit,
    /** How much less than the configuration's immersion still counts as the same. */
    immersionShortfallMillimetre: limit,
    /** A lead or its transition stays at least so far outside the furnace. */
    leadClearMillimetre: limit,
    immersionDiameters: limit,
    boreClearance: z.strictObject({
      belowCelsius: z.number(),
      belowMillimetre: z.number().positive(),
      aboveMillimetre: z.number().positive(),
      source,
    }),
    wire: ByDiameter,
    mineralInsulated: ByDiameter,
    sheathMaterials: z.record(z.string(), OfMaterial),
    leadInsulations: z.record(z.string(), OfMaterial),
    afterExposure: z.strictObject({
      types: letters,
      fromCelsius: z.number(),
      toCelsius: z.number(),
      source,
    }),
    /** Where an order agrees no interval. */
    interpolationIntervalCelsius: limit,
    /** Left out: the laboratory set none. */
    room: RoomLimits.optional(),
    overrides: z.array(Override),
  })
  .superRefine((policy, context) => {
    policy.overrides.forEach(({ code }, index) => {
      if (neverOverridable.has(code))
        context.addIssue({
          code: "custom",
          path: ["overrides", index, "code"],
          message: `No reason sets ${code} aside: take it out of the list.`,
        });
      if (policy.overrides.findIndex((other) => other.code === code) !== index)
        context.addIssue({
          code: "custom",
          path: ["overrides", index, "code"],
          message: `${code} stands here twice.`,
        });
    });
  });
export type GatePolicy = z.output<typeof GatePolicy>;
