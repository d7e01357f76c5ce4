import { describe, expect, it } from "vitest";
import { evidenceJsonSchema } from "@/lib/domain/evidence/json-schema";
import { Evidence } from "@/lib/domain/evidence/schema";
import { buildEvidence } from "./build-evidence";

// biome-ignore lint/suspicious/noExplicitAny: a JSON Schema is walked by name
const schema = evidenceJsonSchema() as any;

describe("the JSON Schema of the evidence file", () => {
  it("is generated from the zod schema: the same fields, none more", () => {
    expect(schema.$schema).toBe("https://json-schema.org/draft/2020-12/schema");
    expect(Object.keys(schema.properties).sort()).toEqual(Object.keys(Evidence.shape).sort());
    expect(schema.additionalProperties).toBe(false);
  });

  it("asks only for what has no default", () => {
    expect(schema.required).toContain("voltmeter");
    expect(schema.required).not.toContain("states");
    expect(schema.required).not.toContain("coverageProbability");
    const place = schema.properties.load.items;
    expect(place.required).not.toContain("tipCheckRiseMicrovolt");
  });

  it("carries the letters and units", () => {
    expect(schema.properties.sensors.items.properties.type.enum).toEqual([
      "B",
      "E",
      "J",
      "K",
      "N",
      "R",
      "S",
      "T",
      "C",
      "A",
    ]);
    const rectangular = schema.properties.sensors.items.properties.repeatability.oneOf[0];
    expect(rectangular.properties.unit.enum).toEqual(["celsius", "microvolt", "relative"]);
    expect(rectangular.properties.halfWidth.minimum).toBe(0);
  });

  it("survives JSON, and a written file survives it too", () => {
    expect(JSON.parse(JSON.stringify(schema))).toEqual(schema);
    const evidence = buildEvidence();
    expect(Evidence.parse(JSON.parse(JSON.stringify(evidence)))).toEqual(Evidence.parse(evidence));
  });
});
