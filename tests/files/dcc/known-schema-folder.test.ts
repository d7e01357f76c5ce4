import { mkdirSync, writeFileSync } from "node:fs";
import path from "node:path";
import { expect, it } from "vitest";
import { knownSchemaFolder } from "@/lib/files/dcc/known-schema-folder";
import { readDcc } from "@/lib/files/dcc/read-dcc";
import { temporaryFolder } from "../../support/temporary-folder";
import { demonstration } from "./read-fixture";

it("reads a folder once, holds nothing where there is none, and tries again what could not be read", () => {
  expect(knownSchemaFolder(null)).toBeUndefined();
  const folder = path.join(temporaryFolder(), "schemas");
  expect(knownSchemaFolder(folder)?.size).toBe(0);
  const outcome = readDcc(demonstration(), knownSchemaFolder(folder));
  expect(outcome.ok && outcome.certificate.isCheckedBySchema).toBe(false);
  mkdirSync(path.join(folder, "dcc", "v3.3.0"), { recursive: true });
  writeFileSync(path.join(folder, "dcc", "v3.3.0", "dcc.xsd"), "<schema/>");
  const files = knownSchemaFolder(folder);
  expect([...(files?.keys() ?? [])]).toEqual(["dcc/v3.3.0/dcc.xsd"]);
  expect(knownSchemaFolder(folder)).toBe(files);
});
