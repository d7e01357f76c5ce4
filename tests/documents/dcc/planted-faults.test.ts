import { describe, expect, it } from "vitest";
import { checkDcc } from "@/lib/documents/dcc/check-dcc";
import { writeDcc } from "@/lib/documents/dcc/write-dcc";
import { checkBySchema } from "@/lib/files/dcc/dcc-schema";
import { withXml } from "@/lib/files/dcc/with-xml";
import { schema } from "@/tests/files/dcc/read-fixture";
import { hash, single } from "./every-content";

const good = writeDcc(single, hash);

/** The passage must be there, and once is enough. */
const planted = (from: string | RegExp, to: string): string => {
  const changed = good.replace(from, () => to);
  if (changed === good) throw new Error(`The certificate has no ${from}`);
  return changed;
};

const firstMember = (name: string, member: string): string =>
  good.replace(new RegExp(`(<si:${name}>)\\S+`), (_, open: string) => open + member);

/** Ten faults that the schema sees. */
const bySchema: readonly (readonly [string, string])[] = [
  ["no customer", planted(/<dcc:customer>[\s\S]*<\/dcc:customer>/, "")],
  ["no unique identifier", planted(/<dcc:uniqueIdentifier>[^<]*<\/dcc:uniqueIdentifier>/, "")],
  [
    "a date that is none",
    planted("2026-10-15</dcc:endPerformanceDate>", "2026-02-30</dcc:endPerformanceDate>"),
  ],
  ["a country that is none", planted("<dcc:countryCodeISO3166_1>GB", "<dcc:countryCodeISO3166_1>Gb")],
  ["k below 1", firstMember("coverageFactorXMLList", "0.5")],
  ["a negative U", firstMember("valueExpandedMUXMLList", "-0.000031")],
  ["a decimal comma", firstMember("valueXMLList", "573,15")],
  [
    "a word of conformity that is none",
    planted("<dcc:conformityXMLList>pass", "<dcc:conformityXMLList>passed"),
  ],
  ["a version that is none", planted('schemaVersion="3.3.0"', 'schemaVersion="3.3"')],
  ["a probability in percent", firstMember("coverageProbabilityXMLList", "95")],
];

/** Four that it lets pass. */
const byRules: readonly (readonly [string, string])[] = [
  ["fewer U than values", planted(/<si:valueExpandedMUXMLList>\S+ /, "<si:valueExpandedMUXMLList>")],
  [
    "a beginning after the end",
    planted("<dcc:beginPerformanceDate>2026-10-14", "<dcc:beginPerformanceDate>2026-10-16"),
  ],
  ["an unknown unit", planted("\\volt<", "\\voltt<")],
  ["a reference that leads nowhere", planted('refId="item1"', 'refId="item9"')],
];

const byPublishedSchema = (xml: string): number => {
  const verdict = withXml(
    new TextEncoder().encode(xml),
    (problem) => expect.fail(problem.message),
    (root, document) => checkBySchema(schema, "3.3.0", root, document),
  );
  if (verdict.kind !== "held") expect.fail("The folder holds no schema 3.3.0.");
  return verdict.problems.length;
};

it("are ten and four, in a certificate that is without fault", () => {
  expect([bySchema.length, byRules.length]).toEqual([10, 4]);
  expect(checkDcc(good, schema)).toEqual([]);
});

describe("the fourteen planted faults, in a certificate that we wrote", () => {
  it.each([...bySchema, ...byRules])("by our own rules alone: %s", (_, xml) => {
    expect(checkDcc(xml).length).toBeGreaterThan(0);
  });

  it.each([...bySchema, ...byRules])("with the schema too, where it is at hand: %s", (_, xml) => {
    const found = checkDcc(xml, schema);
    expect(found.length).toBeGreaterThan(0);
    for (const { path, line, message } of found) {
      expect(path).toMatch(/^\/digitalCalibrationCertificate/);
      expect(line).toBeGreaterThan(0);
      expect(message).toMatch(/[.)]$/);
    }
  });
});

/** Without a schema at hand there is nothing to hold; read-fixture.ts has said so aloud. */
if (schema)
  describe("the published schema by itself", () => {
    it("lets the certificate pass", () => expect(byPublishedSchema(good)).toBe(0));
    it.each(bySchema)("rejects: %s", (_, xml) => {
      expect(byPublishedSchema(xml)).toBeGreaterThan(0);
    });
    it.each(byRules)("does not see, and therefore our rules must: %s", (_, xml) => {
      expect(byPublishedSchema(xml)).toBe(0);
    });
  });
else
  process.stdout.write(
    "NOT CHECKED: that the schema alone rejects ten of the fourteen planted faults and lets four pass; DCC_SCHEMA_DIR is not set.\n",
  );
