import { z } from "zod";
import { ReferenceType } from "../evidence/schema";
import { ok, type Result, refuse } from "../refusal";
import { requiredLine } from "../typed-text";

/** One message for the whole list: it is typed in one field. */
const isRisingList = (given: unknown): boolean =>
  Array.isArray(given) &&
  given.length >= 1 &&
  given.length <= 20 &&
  given.every(
    (one, i) => typeof one === "number" && one >= -100 && one <= 1800 && (i === 0 || one > given[i - 1]),
  );

const millimetre = z.number("Write a number in mm.").min(-2500).max(5000, "At most 5000 mm.");

/** What is to be measured, with what, and over which length: stored with the characterisation's run. */
export const CharacterisationPlan = z
  .strictObject({
    temperatures: z.custom<readonly number[]>(
      isRisingList,
      "Write one to twenty temperatures in °C, rising, each once, such as 300; 700; 1100.",
    ),
    /** The stated length, as depths from the mouth of the tube. */
    fromMillimetre: millimetre,
    toMillimetre: millimetre,
    windowMinutes: z
      .number("Write a number of minutes.")
      .positive("More than nought.")
      .max(600, "At most 600."),
    probe: requiredLine("Name the probe that is moved, such as REF-02.", 80),
    probeType: z.enum(ReferenceType.options, "Choose the probe's type."),
    monitor: requiredLine("Name the monitor that stays, such as REF-01.", 80),
    monitorType: z.enum(ReferenceType.options, "Choose the monitor's type."),
    /** Half-width, per cent of the emf. */
    probeInhomogeneityPercent: z
      .number("Write a number in per cent, such as 0.02.")
      .min(0, "Without sign.")
      .max(2, "At most 2 %."),
    /** u of one reading against another on the same range. */
    meterMicrovolt: z.number("Write a number in µV.").min(0, "Without sign.").max(100, "At most 100 µV."),
  })
  .refine(({ fromMillimetre, toMillimetre }) => toMillimetre > fromMillimetre, {
    path: ["toMillimetre"],
    message: "The length ends deeper than it begins.",
  });
export type CharacterisationPlan = z.infer<typeof CharacterisationPlan>;

type Furnace = {
  readonly minimumCelsius: number;
  readonly maximumCelsius: number;
  readonly lengthMillimetre: number;
};

/** Whether the furnace can do what is planned: within its range, and within its tube. */
export const decidePlan = (plan: CharacterisationPlan, furnace: Furnace): Result<CharacterisationPlan> => {
  const fields: Record<string, string> = {};
  const beyond = plan.temperatures.find(
    (one) => one < furnace.minimumCelsius || one > furnace.maximumCelsius,
  );
  if (beyond !== undefined)
    fields["plan.temperatures"] =
      `${beyond} °C is beyond this furnace, ${furnace.minimumCelsius} to ${furnace.maximumCelsius} °C.`;
  if (plan.fromMillimetre < 0)
    fields["plan.fromMillimetre"] = "A depth from the mouth of the tube is not below nought.";
  if (plan.toMillimetre > furnace.lengthMillimetre)
    fields["plan.toMillimetre"] = `The tube is ${furnace.lengthMillimetre} mm long.`;
  if (plan.probe === plan.monitor)
    fields["plan.monitor"] =
      "The monitor stays where it is while the probe is moved: it is another thermocouple.";
  return Object.keys(fields).length > 0
    ? refuse("invalid", "Nothing was stored; what you typed is still here.", fields)
    : ok(plan);
};

/** Stored text read back. It was judged when it was written, so a misfit is a defect and throws. */
export const readPlan = (text: string): CharacterisationPlan => CharacterisationPlan.parse(JSON.parse(text));
