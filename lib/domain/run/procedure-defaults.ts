import type { UncertaintyInput } from "../evidence/uncertainty-input";
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
const zero = (reason: string): UncertaintyInput => ({ kind: "zero", reason });

const ascending = zero(
  "setpoints are measured in rising order and the rising value is the one certified; hysteresis was not agreed to enter U",
);
const immersed = zero(
  "the load stands as deep as when the configuration was characterised: within its uniformity",
);
const unbroken = zero("the sensor's own wires run to the reference junction unbroken");
const cable = rectangular(5, "microvolt", `${s5}: compensating cable, 0 °C to 40 °C`);

/** The magnitudes of inhomogeneity are typical of as-new wire; EURAMET cg-8 tells how to find one's own. */
const inhomogeneous = (fraction: number): UncertaintyInput =>
  rectangular(
    fraction,
    "relative",
    `${Number((fraction * 100).toFixed(2))} % of the emf: common practice, no source`,
  );

const baseMetal = {
  repeatability: standard(1.6, "microvolt", `${s5}: pooled from ten earlier series (type N)`),
  inhomogeneity: inhomogeneous(0.001),
  lead: cable,
  immersion: immersed,
  shunting: {
    kind: "rectangular",
    halfWidth: 0.2,
    unit: "celsius",
    fromCelsius: 1000,
    source: "mineral insulation leaks above about 1000 °C: the laboratory's own figure, no source",
  },
  hysteresis: ascending,
} as const;

const softBaseMetal = { ...baseMetal, inhomogeneity: inhomogeneous(0.002) } as const;

const nobleMetal = {
  repeatability: standard(0.5, "microvolt", "common practice, no source"),
  inhomogeneity: inhomogeneous(0.0003),
  lead: unbroken,
  immersion: immersed,
  shunting: zero("the wires lie in pure alumina tubes, not in pressed mineral insulation"),
  hysteresis: ascending,
} as const;

const oneMeter =
  "one voltmeter reads both on one range; an error of its calibration or drift is the same in both readings";

const tubeFurnace: BudgetInputs = {
  procedure: "Comparison in a tube furnace, revision 1",
  origin: "laboratory",
  sensitivities: "reference-functions",
  referenceRepeatability: standard(0.1, "celsius", `${s5}: pooled from ten earlier series`),
  heaterPickup: rectangular(
    1,
    "microvolt",
    "a step of at most 1 µV is allowed when the heater is switched off: laboratory policy, no source",
  ),
  stability: rectangular(
    0.03,
    "celsius",
    "linear drift over the window is removed; a third of what the criterion allows may remain: laboratory policy, no source",
  ),
  correlation: {
    voltmeter: { coefficient: 1, reason: oneMeter },
    junction: { coefficient: 1, reason: "where both stand in one junction, or in junctions of one block" },
    references: {
      calibration: { coefficient: 1, reason: "certificates of one laboratory rest on the same standards" },
      drift: { coefficient: 1, reason: "references used alike age alike" },
      own: { coefficient: 0, reason: "every wire and every scanner channel has its own" },
    },
  },
  comparison: {
    zero: { kind: "none", reason: "the parasitic emf of the channels stands in the budget" },
    carryOrder: 2,
  },
  coverage: "student",
  sensors: {
    B: { ...nobleMetal, inhomogeneity: inhomogeneous(0.0005) },
    E: softBaseMetal,
    J: softBaseMetal,
    K: baseMetal,
    N: baseMetal,
    R: nobleMetal,
    S: nobleMetal,
    T: softBaseMetal,
  },
};

const notInS5 = zero(`${s5} has no line of this kind`);
const uncorrelated = { coefficient: 0, reason: `${s5} takes no inputs as correlated` };
const oneObservation = { coefficient: 1, reason: `${s5} counts the two references as one observation` };

/** As the example prints it: its sensitivities, and no term for inhomogeneity, which it does not have. */
const publishedS5: BudgetInputs = {
  procedure: "EA-4/02 example S5, as published",
  origin: "published-example",
  source:
    "EA-4/02 M:2013, example S5: readings, sensitivities and uncertainties as published. The times of the readings and the references' own deviations are not published; they are ours.",
  sensitivities: "given",
  referenceRepeatability: standard(0.1, "celsius", `${s5}, 5.15: pooled from ten earlier series`),
  heaterPickup: notInS5,
  stability: notInS5,
  correlation: {
    voltmeter: uncorrelated,
    junction: uncorrelated,
    references: { calibration: oneObservation, drift: oneObservation, own: oneObservation },
  },
  comparison: {
    zero: { kind: "none", reason: `${s5} reverses the leads instead` },
    carryOrder: 1,
  },
  coverage: "student",
  sensors: {
    N: {
      repeatability: standard(1.6, "microvolt", `${s5}: pooled from ten earlier series`),
      inhomogeneity: { kind: "zero", reason: `${s5} has no term for inhomogeneity` },
      lead: cable,
      immersion: notInS5,
      shunting: notInS5,
      hysteresis: notInS5,
    },
  },
  givenSensitivities: {
    R: { celsiusPerMicrovolt: 0.077, celsiusPerMicrovoltAtJunction: 0.189 },
    N: { celsiusPerMicrovolt: 0.026, celsiusPerMicrovoltAtJunction: 0.039 },
  },
};

/** What comes with the platform; a laboratory keeps them as revision 1 of its procedures and goes on from there. */
export const procedures = {
  "tube-furnace": tubeFurnace,
  "ea-4-02-s5": publishedS5,
} as const satisfies Readonly<Record<string, BudgetInputs>>;
