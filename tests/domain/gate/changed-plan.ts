import type { GatePlan } from "@/lib/domain/gate/plan";
import { plan, reference, sensor, withBench, withBuild, withConfiguration, withSensor } from "./plan-of";

export type GateCase = {
  /** What the gate must say of it, alone: "code severity subjects". */
  readonly says: string;
  readonly plan: Partial<GatePlan>;
  /** The other side of the limit, where there is one: not a word. */
  readonly fine?: Partial<GatePlan>;
};

export const places = (at: number, more: Partial<GatePlan["places"][number]>): Partial<GatePlan> => ({
  places: plan.places.map((one, index) => (index === at ? { ...one, ...more } : one)),
});
export const lead = (leadInsulation: "ptfe" | "pvc" | "silica", lengthMillimetre: number) =>
  withBuild({ leadInsulation, lengthMillimetre });
/** Wire in an alumina tube of its own: the table of wire sizes applies. */
export const wire = (type: "K" | "S" | "T", wireMillimetre: number) =>
  withSensor({
    type,
    tolerance: null,
    protection: "alumina-sheath",
    build: { ...sensor.build, sheath: "tube", sheathMaterial: "alumina", wireMillimetre },
  });
export const mims = (sheathMillimetre: number, type: "K" | "J" = "K"): Partial<GatePlan> => ({
  ...withSensor({ type, tolerance: null, build: { ...sensor.build, sheathMillimetre } }),
  configuration: {
    ...plan.configuration,
    bores: [{ place: "2", diameterMillimetre: sheathMillimetre + 0.2 }],
  },
});
export const upTo = (celsius: number, more: Partial<GatePlan>): Partial<GatePlan> => {
  const ordered = [300, 400, 500, celsius];
  return {
    ...more,
    setpointsCelsius: ordered,
    configuration: { ...(more.configuration ?? plan.configuration), maximumCelsius: celsius },
    references: [{ ...reference, range: { fromCelsius: 300, toCelsius: celsius } }],
    sensors: (more.sensors ?? plan.sensors).map((one) => ({
      ...one,
      orderedCelsius: ordered,
      largestIntervalCelsius: 2000,
      tolerance: null,
    })),
  };
};
/** Thick wire in an alumina tube. */
export const asWire = (type: "E" | "N" | "C", more: Partial<GatePlan["sensors"][number]> = {}) =>
  withSensor({
    type,
    tolerance: null,
    protection: "alumina-sheath",
    build: { ...sensor.build, sheath: "tube", sheathMaterial: "alumina", wireMillimetre: 3.3 },
    ...more,
  });
/** Type T ends at 400 °C. */
export const typeT = (celsius: number): Partial<GatePlan> => ({
  setpointsCelsius: [300, 350, celsius],
  ...withSensor({
    type: "T",
    protection: "alumina-sheath",
    tolerance: null,
    use: { fromCelsius: 300, toCelsius: celsius },
    build: { ...sensor.build, sheath: "tube", sheathMaterial: "alumina", wireMillimetre: 3.3 },
  }),
});
/** Every channel reads nought: good enough for platinum too. */
export const quiet = withBench({ channels: plan.bench.channels.map((one) => ({ ...one, microvolt: 0 })) });
export const clearance = (diameterMillimetre: number) =>
  withConfiguration({ bores: [{ place: "2", diameterMillimetre }] });
export const otherRun = (more: Partial<GatePlan["otherRuns"][number]>): Partial<GatePlan> => ({
  otherRuns: [{ run: "R-0", scanner: "SC-9", configurationId: "other", channels: ["102"], ...more }],
});
export const late = { ...plan.voltmeter!.calibration!, dueOn: "2026-10-14" };
export const tip = (riseMicrovolt: number, onlyThisChannel = true): Partial<GatePlan> => ({
  tips: [plan.tips[0]!, { place: "2", check: { riseMicrovolt, onlyThisChannel } }],
});
export const channels = (channel: string, microvolt: number) =>
  withBench({
    channels: plan.bench.channels.map((one) => (one.channel === channel ? { channel, microvolt } : one)),
  });
export const junction = (thermometerCelsius: number) =>
  withBench({ junctions: [{ ...plan.bench.junctions[0]!, thermometerCelsius }] });
