import { Validator } from "@seriousme/openapi-schema-validator";
import { expect, it } from "vitest";
import { openApiDocument } from "@/lib/domain/machine/openapi";

const document = () => structuredClone(openApiDocument("https://lab.example.org", "A laboratory"));

// Against the JSON Schema that the OpenAPI Initiative publishes for 3.1, as this library carries it.
it("is OpenAPI 3.1", async () => {
  const validator = new Validator();
  const { valid, errors } = await validator.validate(document() as never);
  expect([valid, errors]).toEqual([true, undefined]);
  expect(validator.version).toBe("3.1");
});

it("would not pass with a fault", async () => {
  const { valid } = await new Validator().validate({
    ...document(),
    paths: { "/orders": { get: { responses: 7 } } },
  } as never);
  expect(valid).toBe(false);
});

it("refers to no schema that is not there, and has none that nothing refers to", () => {
  const text = JSON.stringify(document());
  const named = [...text.matchAll(/#\/components\/schemas\/([A-Za-z]+)/g)].map(([, name]) => name);
  const { schemas } = document().components as { schemas: Record<string, unknown> };
  expect([...new Set(named)].toSorted()).toEqual(Object.keys(schemas).toSorted());
});

it("names the scopes that a token can have", () => {
  const text = JSON.stringify(document().paths);
  for (const scope of ["orders:read", "orders:write", "certificates:read"]) expect(text).toContain(scope);
});
