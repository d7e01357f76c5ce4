import type { UncertaintyInput } from "../evidence/schema";
import type { BudgetInputs } from "./budget-inputs";

/**
 * What the laboratory takes for granted until it has measured it: each figure with where it comes from.
 * A laboratory replaces these by its own pooled repeatability and its own inhomogeneity tests.
 */

const s5 = "EA-4/02 M:2013, example S5";

const standard = (value: number, unit: "celsius" | "microvolt", source: string): UncertaintyInput => ({
  kind: "standard",
  standard: value,
  unit,
  source,
});
const rectangular = (
  halfWidth: number,
  unit: "celsius" | "microvolt" | "relative",
  source: string,
): UncertaintyInput => ({ kind: "rectangular", halfWidth, unit, source });

const baseMetal = {
  repeatability: standard(1.6, "microvolt", `${s5}: pooled from ten earlier series (type N)`),
  // The magnitudes are typical of as-new wire; EURAMET cg-8 tells how to find one's own.
  inhomogeneity: rectangular(0.001, "relative", "0.1 % of the emf: common practice, no source"),
  lead: rectangular(5, "microvolt", `${s5}: compensating cable, 0 °C to 40 °C`),
} as const;

const nobleMetal = {
  repeatability: standard(0.5, "microvolt", "common practice, no source"),
  inhomogeneity: rectangular(0.0003, "relative", "0.03 % of the emf: common practice, no source"),
  lead: { kind: "zero", reason: "the sensor's own wires run to the reference junction unbroken" },
} as const;

/** The procedure new runs follow unless another is chosen. */
const tubeFurnace: BudgetInputs = {
  procedure: "Comparison in a tube furnace, revision 1",
  origin: "laboratory",
  sensitivities: "reference-functions",
  referenceRepeatability: standard(0.1, "celsius", `${s5}: pooled from ten earlier series`),
  sensors: { K: baseMetal, N: baseMetal, R: nobleMetal, S: nobleMetal },
};

/** As the example prints it: its sensitivities, and no term for inhomogeneity, which it does not have. */
const publishedS5: BudgetInputs = {
  procedure: "EA-4/02 example S5, as published",
  origin: "published-example",
  source:
    "EA-4/02 M:2013, example S5: readings, sensitivities and uncertainties as published. The times of the readings and the references' own deviations are not published; they are ours.",
  sensitivities: "given",
  referenceRepeatability: standard(0.1, "celsius", `${s5}, 5.15: pooled from ten earlier series`),
  sensors: {
    N: {
      repeatability: standard(1.6, "microvolt", `${s5}: pooled from ten earlier series`),
      inhomogeneity: { kind: "zero", reason: `${s5} has no term for inhomogeneity` },
      lead: rectangular(5, "microvolt", `${s5}: compensating cable, 0 °C to 40 °C`),
    },
  },
  givenSensitivities: {
    R: { celsiusPerMicrovolt: 0.077, celsiusPerMicrovoltAtJunction: 0.189 },
    N: { celsiusPerMicrovolt: 0.026, celsiusPerMicrovoltAtJunction: 0.039 },
  },
};

export const procedures = {
  "tube-furnace": tubeFurnace,
  "ea-4-02-s5": publishedS5,
} as const satisfies Readonly<Record<string, BudgetInputs>>;
export type ProcedureKey = keyof typeof procedures;
export const procedureKeys = Object.keys(procedures) as readonly ProcedureKey[];
