import { expect, it } from "vitest";
import { checkDcc } from "@/lib/documents/dcc/check-dcc";
import { configureDccSchema, dccSchemaInUse } from "@/lib/documents/dcc/schema-in-use";
import { writeDcc } from "@/lib/documents/dcc/write-dcc";
import { temporaryFolder } from "@/tests/support/temporary-folder";
import { hash, single } from "./every-content";

it("is none until a folder is named, and none where the folder holds none", () => {
  expect(dccSchemaInUse()).toBeUndefined();
  configureDccSchema(temporaryFolder());
  expect(dccSchemaInUse()?.size).toBe(0);
  expect(checkDcc(writeDcc(single, hash), dccSchemaInUse())).toEqual([]);
  configureDccSchema(null);
  expect(dccSchemaInUse()).toBeUndefined();
});

const folder = process.env.DCC_SCHEMA_DIR;
if (folder)
  it("holds certificates against the published schema once its folder is named", () => {
    configureDccSchema(folder);
    const xml = writeDcc(single, hash);
    expect(checkDcc(xml, dccSchemaInUse())).toEqual([]);
    // Two elements in another order: our own rules do not mind, the schema does.
    const turned = xml.replace(
      /(<dcc:issuer>[^<]*<\/dcc:issuer>)(\s*)(<dcc:value>[^<]*<\/dcc:value>)/,
      "$3$2$1",
    );
    expect(checkDcc(turned)).toEqual([]);
    expect(checkDcc(turned, dccSchemaInUse()).map(({ code }) => code)).toContain("schema");
    configureDccSchema(null);
  });
else process.stdout.write("NOT CHECKED: the schema in use; DCC_SCHEMA_DIR is not set.\n");
