import { z } from "zod";

const thermocoupleTypes = ["B", "E", "J", "K", "N", "R", "S", "T"] as const;

const positive = (most: number, message: string) => z.number(message).positive(message).max(most, message);
const resistivity = positive(10, "Write µΩ·m as a number above 0, up to 10.");
const megaohm = positive(1_000_000, "Write MΩ as a number above 0, up to 1 000 000.");

/**
 * The limits sensors are held against at intake. Every default is laboratory policy, no source: the quality manager
 * confirms or changes it. The resistivities are usual figures from memory for both wires together at room temperature;
 * they only serve to tell a plausible loop from an implausible one.
 */
export const IntakePolicy = z.strictObject({
  /** Least insulation between wires and sheath, cold, by what the sensor went through before it came. */
  leastInsulationMegaohm: z
    .strictObject({ new: megaohm, used: megaohm, notKnown: megaohm })
    .default({ new: 100, used: 100, notKnown: 100 }),
  /** How far the loop resistance may lie from what wire and length let expect. */
  loopTolerancePercent: positive(100, "Write percent as a number above 0, up to 100.").default(20),
  /** More than this is an open or failing loop, whatever the sensor. */
  largestLoopOhm: positive(1_000_000, "Write Ω as a number above 0, up to 1 000 000.").default(1000),
  pairResistivityMicroohmMetre: z
    .strictObject(
      Object.fromEntries(thermocoupleTypes.map((type) => [type, resistivity])) as Record<
        (typeof thermocoupleTypes)[number],
        typeof resistivity
      >,
    )
    .default({ B: 0.36, E: 1.2, J: 0.59, K: 1.0, N: 1.34, R: 0.3, S: 0.29, T: 0.51 }),
});
export type IntakePolicy = z.output<typeof IntakePolicy>;
export const policyTypes = thermocoupleTypes;

export const defaultIntakePolicy: IntakePolicy = IntakePolicy.parse({});

/** As stored, JSON text; what is not set is the default. */
export const readIntakePolicy = (stored: string): IntakePolicy => IntakePolicy.parse(JSON.parse(stored));
