import { describe, expect, it } from "vitest";
import { readDcc } from "@/lib/files/dcc/read-dcc";
import { between, changed, good } from "./change-passage";
import { further } from "./further-faults";
import { demonstration, problemsOf, schema } from "./read-fixture";

describe("our own rules, each by its code and place", () => {
  it.each(further)("%s", (_name, from, to, code, message) => {
    const { bytes, line } = changed(from, to);
    const problems = problemsOf(readDcc(bytes));
    const found = problems.find((problem) => problem.code === code && message.test(problem.message));
    expect(found, JSON.stringify(problems, null, 1)).toBeDefined();
    expect(found?.path).toMatch(/^\/digitalCalibrationCertificate(\/|$)/);
    // At the fault, or at the part that lacks or contradicts it.
    expect(found?.line).toBeGreaterThan(0);
    expect(Math.abs((found?.line ?? 0) - line)).toBeLessThan(150);
  });

  it("tell all that is wrong at once, from top to bottom", () => {
    const one = new TextDecoder().decode(
      changed("<dcc:countryCodeISO3166_1>GB", "<dcc:countryCodeISO3166_1>XX").bytes,
    );
    const two = new TextDecoder().decode(changed("\\micro\\volt", "\\microvolt", one).bytes);
    const problems = problemsOf(readDcc(changed("<dcc:mainSigner>true", "<dcc:mainSigner>si", two).bytes));
    expect(problems.map(({ path }) => path.split("/").at(-1))).toEqual([
      "countryCodeISO3166_1",
      "mainSigner",
      "unitXMLList",
    ]);
    const lines = problems.map(({ line }) => line);
    expect(lines).toEqual([...lines].sort((a, b) => a - b));
  });

  it("let a relative uncertainty pass that agrees within its rounding", () => {
    const relative =
      "<dcc:relativeUncertainty><dcc:relativeUncertaintyXmlList><si:valueXMLList>0.0018 0.0011 0.00077 0.00062 0.00053 0.00049</si:valueXMLList><si:unitXMLList>\\one</si:unitXMLList></dcc:relativeUncertaintyXmlList></dcc:relativeUncertainty>";
    const end =
      '</si:realListXMLList>\n              </dcc:quantity>\n              <dcc:quantity refType="basic_measurementError';
    const outcome = readDcc(
      changed(end, end.replace("</si:realListXMLList>", `</si:realListXMLList>${relative}`)).bytes,
      schema,
    );
    expect(
      outcome.ok &&
        outcome.certificate.results[0]?.data.tables[0]?.quantities[1]?.relativeUncertainty?.numbers[0],
    ).toBe(0.0018);
  });

  it("do not ask older versions for methods and conditions", () => {
    const older = good
      .replace('schemaVersion="3.3.0"', 'schemaVersion="3.2.1"')
      .replace(between("<dcc:usedMethods>", "</dcc:usedMethods>"), "");
    expect(readDcc(new TextEncoder().encode(older)).ok).toBe(true);
  });

  it("accept what 3.3 allows: methods, equipment and conditions for all results, and for one quantity", () => {
    const methods = between("<dcc:usedMethods>", "</dcc:usedMethods>");
    const moved = good
      .replace(methods, "")
      .replace("<dcc:measurementResults>", `<dcc:measurementResults>${methods}`);
    const outcome = readDcc(new TextEncoder().encode(moved), schema);
    expect(outcome.ok && outcome.certificate.methods.map(({ reach }) => reach)).toEqual([
      "all-results",
      "all-results",
    ]);
  });
});

describe("schema files that cannot be used", () => {
  it("are told, not passed over", () => {
    const broken = new Map([["dcc/v3.3.0/dcc.xsd", new TextEncoder().encode("<schema/>")]]);
    const [problem] = problemsOf(readDcc(demonstration(), broken));
    expect(problem).toMatchObject({ code: "schema", line: 0 });
    expect(problem?.message).toContain("schema folder");
  });
});
