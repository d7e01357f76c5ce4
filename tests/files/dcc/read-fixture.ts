import { existsSync, readFileSync } from "node:fs";
import path from "node:path";
import { expect } from "vitest";
import { type DccOutcome, describeDccProblem } from "@/lib/files/dcc/dcc-certificate";
import { readDccSchemaFolder } from "@/lib/files/dcc/dcc-schema-folder";

const here = import.meta.dirname;

export const fixture = (name: string): Uint8Array => readFileSync(path.join(here, "fixtures", name));

/** The certificate of the demonstration; our own and invented. */
export const demonstration = (): Uint8Array =>
  readFileSync(path.resolve(here, "../../../prisma/seed/reference-certificate.dcc.xml"));

const folder = process.env.REFERENCE_DIR ? path.join(process.env.REFERENCE_DIR, "dcc", "examples") : "";

/** An example that is not in the repository; null, and said aloud, where REFERENCE_DIR does not hold it. */
export const example = (name: string): Uint8Array | null => {
  const file = path.join(folder, name);
  if (folder !== "" && existsSync(file)) return readFileSync(file);
  process.stdout.write(`NOT CHECKED: ${name}; REFERENCE_DIR has no dcc/examples with it.\n`);
  return null;
};

const schemas = process.env.DCC_SCHEMA_DIR;
if (!schemas)
  process.stdout.write(
    "NOT CHECKED: certificates against the schema of the DCC; DCC_SCHEMA_DIR is not set.\n",
  );

/** undefined, and said aloud, where DCC_SCHEMA_DIR is not set: our own rules are tested all the same. */
export const schema = schemas ? readDccSchemaFolder(schemas) : undefined;

export const certificateOf = (outcome: DccOutcome) => {
  if (!outcome.ok) expect.fail(outcome.problems.map(describeDccProblem).join("\n"));
  return outcome.certificate;
};

export const problemsOf = (outcome: DccOutcome) => {
  if (outcome.ok) expect.fail("The file was read, and should have been refused.");
  return outcome.problems;
};
