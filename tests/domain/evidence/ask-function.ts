import type { DeviationFunctionChoice, EvidenceInput, TypeLetter } from "@/lib/domain/evidence/schema";
import { buildEvidence } from "./build-evidence";

const DWELL_SECONDS = 900;

export const lineThroughZero = {
  degreeRule: { kind: "fixed", degree: 1 },
  isThroughZero: true,
  method: "propagated",
  allowBelow: null,
} as const;

/** An invented run over several setpoints, one dwell after the other, whose sensor asks for a deviation function. */
export const askFunction = (given: {
  readonly over: readonly number[];
  readonly choice: DeviationFunctionChoice;
  readonly type?: TypeLetter;
  readonly digits?: 1 | 2;
  /** Half-width of the inhomogeneity, relative: what makes U large or small. */
  readonly inhomogeneity?: number;
}): EvidenceInput => {
  const { over, choice, digits = 2, inhomogeneity = 0.0005 } = given;
  const evidence = buildEvidence({
    sensors: [given.type ?? "N"],
    nominals: over,
    errorCelsius: 0.5,
    scans: (over.length * DWELL_SECONDS) / 10,
    furnace: (t) => over[Math.min(over.length - 1, Math.floor(t / DWELL_SECONDS))] ?? 300,
  });
  return {
    ...evidence,
    sensors: evidence.sensors.map((sensor) => ({
      ...sensor,
      inhomogeneity: {
        kind: "rectangular",
        halfWidth: inhomogeneity,
        unit: "relative",
        source: "invented for a test",
      } as const,
      uncertaintyDigits: digits,
      deviationFunction: choice,
    })),
    windows: over.map((nominal, i) => ({
      setpoint: `${nominal}`,
      fromSeconds: i * DWELL_SECONDS + 10,
      toSeconds: (i + 1) * DWELL_SECONDS - 10,
    })),
  };
};
