import type { EvidenceInput } from "@/lib/domain/evidence/schema";
import { procedures } from "@/lib/domain/run/procedure-defaults";
import { emf } from "@/lib/metrology/thermocouple/emf";
import { referenceFunctions } from "@/lib/metrology/thermocouple/reference-functions";
import { randomFrom } from "@/lib/station/simulation/random";

/** An invented load as large as one scanner takes: two references and 38 sensors, read once a second. */
export const heavyChannels = 40;
/** As large as certificates come: 40 sensors between two references. Nothing in a run counts its channels. */
export const heaviestChannels = 42;
export const heavySetpoints = [300, 400, 500, 600, 700, 800, 900, 1000] as const;
export const heavySeconds = 1800;

const types = ["K", "N", "S", "K", "N", "R"] as const;
const invented = "invented for the bench";
const zero = { kind: "zero", reason: invented } as const;
const calibration = { certificate: "B-1", issuer: invented, performedOn: "2026-01-10", dueOn: "2027-01-10" };
const rectangular = (halfWidth: number, unit: "celsius" | "microvolt" | "relative") =>
  ({ kind: "rectangular", halfWidth, unit, source: invented }) as const;

const microvoltAt = (type: (typeof types)[number], celsius: number): number => {
  const value = emf(referenceFunctions[type], celsius);
  if (!value.ok) throw new Error(value.problem.message);
  return value.value;
};

const itemAt = (index: number, channels: number) => {
  const isReference = index === 0 || index === channels - 1;
  return {
    id: isReference ? `R${index}` : `X${index}`,
    kind: isReference ? ("reference" as const) : ("sensor" as const),
    type: isReference ? ("S" as const) : (types[index % types.length] as (typeof types)[number]),
    channel: `${101 + index}`,
  };
};

/** Eight dwells one behind the other, each a window of its own; noise of 0.3 µV. */
export const heavyRun = (howMany = heavyChannels): EvidenceInput => {
  const random = randomFrom(1);
  const items = Array.from({ length: howMany }, (_, index) => itemAt(index, howMany));
  const procedure = procedures["tube-furnace"];
  const { referenceRepeatability, heaterPickup, stability, correlation, comparison, coverage } = procedure;
  return {
    format: "emfolio-evidence",
    version: 2,
    title: "Bench",
    origin: "simulated",
    sensors: items.flatMap(({ kind, id, type }) => {
      const inputs = procedure.sensors[type];
      if (kind === "reference" || !inputs) return [];
      return [
        {
          id,
          serial: id,
          type,
          protection: referenceFunctions[type].isNoble
            ? ("alumina-sheath" as const)
            : ("metal-sheath" as const),
          tolerance: { standard: "IEC 60584-1:2013" as const, class: "2" as const },
          ...inputs,
        },
      ];
    }),
    configuration: {
      furnace: "Bench",
      kind: "bare-tube",
      name: "Bundle",
      characterisation: {
        uniformity: rectangular(0.4, "celsius"),
        axial: zero,
        radial: zero,
        gradient: zero,
        statement: "±0.4 °C over 40 mm, half range (invented)",
      },
    },
    load: items.map(({ kind, id, channel }) => ({
      place: channel,
      item: { kind, id },
      channel,
      junction: "J",
      tipCheckRiseMicrovolt: 80,
    })),
    references: items.flatMap(({ kind, id }) =>
      kind === "sensor"
        ? []
        : [
            {
              id,
              serial: id,
              type: "S" as const,
              protection: "alumina-sheath" as const,
              calibration,
              correction: {
                kind: "points" as const,
                points: [250, 600, 1100].map((celsius) => ({ celsius, deviationMicrovolt: celsius / 200 })),
              },
              calibrationUncertainty: {
                kind: "expanded" as const,
                expanded: 0.5,
                coverageFactor: 2,
                unit: "celsius" as const,
                source: invented,
              },
              interpolation: rectangular(0.05, "celsius"),
              drift: rectangular(0.2, "celsius"),
              inhomogeneity: rectangular(0.0002, "relative"),
            },
          ],
    ),
    referenceRepeatability,
    heaterPickup,
    stability,
    correlation,
    comparison,
    coverage,
    voltmeter: {
      id: "V",
      serial: "V",
      calibration,
      corrections: [
        { microvolt: 0, correctionMicrovolt: 0.1 },
        { microvolt: 50_000, correctionMicrovolt: 0.6 },
      ],
      calibrationUncertainty: rectangular(1, "microvolt"),
      drift: rectangular(1, "microvolt"),
      resolution: rectangular(0.05, "microvolt"),
    },
    scanner: { id: "C", serial: "C", calibration: null, parasitic: rectangular(0.5, "microvolt") },
    junctions: [
      { id: "J", celsius: 23, calibration: null, uncertainty: rectangular(0.03, "celsius"), spread: zero },
    ],
    setpoints: heavySetpoints.map((nominalCelsius) => ({ id: `${nominalCelsius}`, nominalCelsius })),
    scans: {
      startedAt: "2026-06-01T08:00:00Z",
      channels: items.map(({ type, channel }, index) => {
        const net = heavySetpoints.map((celsius) => microvoltAt(type, celsius) - microvoltAt(type, 23));
        const seconds = Array.from(
          { length: heavySetpoints.length * heavySeconds },
          (_, i) => i + index / howMany,
        );
        return {
          channel,
          seconds,
          microvolts: seconds.map((_, i) => (net[Math.floor(i / heavySeconds)] ?? 0) + random.normal(0.3)),
          polarity: seconds.map(() => 1 as const),
        };
      }),
    },
    windows: heavySetpoints.map((celsius, i) => ({
      setpoint: `${celsius}`,
      fromSeconds: i * heavySeconds,
      toSeconds: (i + 1) * heavySeconds - 1,
    })),
    sensitivities: "reference-functions",
    decisionRule: { kind: "guarded", guardBandRatio: 1 },
    rounding: { uncertaintyDigits: 2 },
  };
};
