import { describe, expect, it } from "vitest";
import { gateCodes } from "@/lib/domain/gate/codes";
import type { GatePlan } from "@/lib/domain/gate/plan";
import { benchCases } from "./bench-cases";
import { quiet } from "./changed-plan";
import { complaints, plan, reference, sensor, withBench, withConfiguration, withSensor } from "./plan-of";
import { sensorCases } from "./sensor-cases";

const cases = [...sensorCases, ...benchCases];

describe("the rules of the gate", () => {
  it("say nothing of a run in order", () => {
    expect(complaints({})).toEqual([]);
  });

  it.each(cases.map((one, index) => [`${one.says} (${index})`, one] as const))("%s", (_name, one) => {
    expect(complaints(one.plan).join("; ")).toBe(one.says);
    if (one.fine) expect(complaints(one.fine)).toEqual([]);
  });

  it("see a thing that stands in two places", () => {
    const twice: Partial<GatePlan> = {
      places: [...plan.places, { ...plan.places[1]!, place: "4", channel: "104" }],
      ...withConfiguration({ places: 3 }),
      ...withBench({ channels: [...plan.bench.channels, { channel: "104", microvolt: 0 }] }),
    };
    expect(complaints(twice)).toEqual(["item-twice refuse T-1"]);
  });

  it("let one platinum sheath stand beside another, but not bare platinum beside a metal sheath in a block", () => {
    const noble = withSensor({
      type: "S",
      tolerance: null,
      build: { ...sensor.build, sheath: "tube", sheathMaterial: "alumina", wireMillimetre: 0.5 },
    });
    const beside = (protection: "alumina-sheath" | "metal-sheath", kind: "bare-tube" | "equalising-block") =>
      complaints({
        ...noble,
        ...quiet,
        ...withConfiguration({ kind }),
        sensors: noble.sensors!.map((one) => ({ ...one, protection })),
        references: [{ ...reference, protection: "bare-wire" }],
      });
    expect(beside("alumina-sheath", "equalising-block")).toEqual([]);
    expect(beside("metal-sheath", "equalising-block")).toEqual(["platinum-unsheathed refuse REF-1"]);
    expect(beside("metal-sheath", "bare-tube")).toEqual([]);
  });

  it("count a point after a higher one of the same run as measured after exposure", () => {
    const descending = { setpointsCelsius: [300, 600, 500] };
    expect(complaints({ ...descending, ...withSensor({ largestIntervalCelsius: 200 }) })).toEqual([
      "after-exposure overridable T-1",
      "ascending-order overridable T-1",
    ]);
  });

  it("are all held here by their code", () => {
    const held = new Set([
      ...cases.flatMap(({ says }) => says.split("; ").map((said) => said.split(" ")[0])),
      "item-twice",
    ]);
    expect(gateCodes.filter((code) => !held.has(code))).toEqual([]);
  });
});
