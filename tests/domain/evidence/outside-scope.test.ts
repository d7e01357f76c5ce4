import { expect, it } from "vitest";
import { sensorScope } from "@/lib/domain/evidence/sensor-scope";
import { readEvidenceHead } from "@/lib/domain/review/evidence-head";
import { buildEvidence } from "./build-evidence";
import { measured } from "./measured";

const scope = [
  {
    type: "K" as const,
    fromCelsius: 0,
    toCelsius: 1200,
    expandedCelsius: 90,
    source: "an invented schedule",
  },
];
const evidence = buildEvidence({ sensors: ["K", "K"] });
const flagged = {
  ...evidence,
  scope,
  sensors: evidence.sensors.map((sensor, index) =>
    index === 0 ? { ...sensor, outsideScope: "it is 300 mm long" } : sensor,
  ),
};

it("a sensor whose results are reported outside the scope has each of its points marked, and no U raised", () => {
  const of = (index: number) =>
    measured(flagged).filter(({ sensor }) => sensor === flagged.sensors[index]?.id);
  expect(of(0).length).toBeGreaterThan(0);
  for (const point of of(0)) {
    expect(point.scope).toMatchObject({ state: "outside", isRaised: false, capabilityCelsius: null });
    expect(point.expandedCelsius).toBeLessThan(90);
  }
  for (const point of of(1)) expect(point.scope).toMatchObject({ state: "inside", isRaised: true });
});

it("says nothing of a scope where the laboratory states none", () => {
  const { scope: _, ...without } = flagged;
  for (const point of measured(without)) expect(point.scope.state).toBe("not-stated");
});

it("is known to whoever reads the head of a stored evaluation", () => {
  const head = readEvidenceHead(JSON.stringify(flagged));
  expect(head.sensors.map((sensor) => sensorScope(head.scope, sensor)?.length)).toEqual([0, 1]);
  expect(sensorScope(undefined, head.sensors[0])).toBeUndefined();
});
