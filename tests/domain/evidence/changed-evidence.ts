import { evaluateEvidence } from "@/lib/domain/evidence/evaluate";
import type { MeasuredPoint } from "@/lib/domain/evidence/evaluation";
import type { EvidenceInput } from "@/lib/domain/evidence/schema";

type Sensor = EvidenceInput["sensors"][number];
type Uniformity = Partial<EvidenceInput["configuration"]["characterisation"]>;

export const rectangular = (halfWidth: number, more: object = {}) =>
  ({ kind: "rectangular", halfWidth, unit: "celsius", source: "invented", ...more }) as const;
export const zero = { kind: "zero", reason: "set to nothing for a test" } as const;

export const withSensor = (evidence: EvidenceInput, change: Partial<Sensor>): EvidenceInput => ({
  ...evidence,
  sensors: evidence.sensors.map((sensor) => ({ ...sensor, ...change })),
});

export const withFurnace = (evidence: EvidenceInput, change: Uniformity): EvidenceInput => ({
  ...evidence,
  configuration: {
    ...evidence.configuration,
    characterisation: { ...evidence.configuration.characterisation, ...change },
  },
});

export const lineOf = (point: MeasuredPoint | undefined, key: string) => {
  const lines = [
    ...(point?.temperatureBudget.contributions ?? []),
    ...(point?.emfBudget.contributions ?? []),
  ];
  const found = lines.find((line) => line.key === key);
  if (!found) throw new Error(key);
  return found;
};

export const problems = (evidence: EvidenceInput) => {
  const outcome = evaluateEvidence(evidence);
  return outcome.ok ? [] : outcome.problems;
};
