import { describe, expect, it } from "vitest";
import { readDcc } from "@/lib/files/dcc/read-dcc";
import { tableForReference } from "@/lib/files/dcc/table-for-reference";
import { certificateOf, fixture, problemsOf, schema } from "./read-fixture";

describe("older versions, as files of our own in their manner", () => {
  it("3.0.0: lists of single values, U said once at the head of a list", () => {
    const certificate = certificateOf(readDcc(fixture("dcc-3.0.0.xml"), schema));
    expect(certificate).toMatchObject({
      schemaVersion: "3.0.0",
      isCheckedBySchema: false,
      issueDate: null,
      previousReport: { uniqueIdentifier: "INV-2018-0003" },
    });
    expect(certificate.conditions).toMatchObject([{ kind: "reference-junction" }]);
    const [temperature, emf] = certificate.results[0]?.data.tables[0]?.quantities ?? [];
    expect(temperature?.columns[0]).toMatchObject({
      units: ["\\degreecelsius", "\\degreecelsius"],
      numbers: [419.527, 660.323],
    });
    expect(emf?.columns[0]).toMatchObject({
      units: ["\\micro\\volt", "\\micro\\volt"],
      written: ["3447.8", "5861.2"],
      uncertainty: { kind: "expanded", numbers: [2.6, 2.6], coverageFactor: [2, 2], distribution: [] },
    });
  });

  it("3.0.0 with a realList between list and values, as later D-SI writes it: the same", () => {
    const text = new TextDecoder().decode(fixture("dcc-3.0.0.xml"));
    const later = text
      .replaceAll("<si:list>", "<si:list><si:realList>")
      .replaceAll("</si:list>", "</si:realList></si:list>");
    const quantities = (bytes: Uint8Array) =>
      certificateOf(readDcc(bytes)).results[0]?.data.tables[0]?.quantities.map(({ columns }) =>
        columns.map(({ written, units, uncertainty }) => [written, units, uncertainty?.written]),
      );
    expect(quantities(new TextEncoder().encode(later))).toEqual(quantities(fixture("dcc-3.0.0.xml")));
  });

  it("which equipment belongs to which value is kept where metaData says it", () => {
    const text = new TextDecoder()
      .decode(fixture("dcc-3.2.1.xml"))
      .replace("<d:measuringEquipment refType", '<d:measuringEquipment id="pt25" refType')
      .replace(
        "</d:quantity>\n              <d:influenceConditions>",
        '<d:measurementMetaData><d:metaData refId="pt25 pt25"/></d:measurementMetaData></d:quantity><d:influenceConditions>',
      );
    const certificate = certificateOf(readDcc(new TextEncoder().encode(text)));
    expect(certificate.equipment[0]?.id).toBe("pt25");
    expect(certificate.results[0]?.data.tables[0]?.quantities[1]?.remarks[0]?.refIds).toEqual([
      "pt25",
      "pt25",
    ]);
  });

  it("before 3.2 a word may have blanks around it or be left out, but not what identifies", () => {
    const text = new TextDecoder().decode(fixture("dcc-3.0.0.xml"));
    const loose = text
      .replace("<dcc:release>1.4<", "<dcc:release><")
      .replace("<dcc:city>Northtown<", "<dcc:city> Northtown\n<");
    const certificate = certificateOf(readDcc(new TextEncoder().encode(loose)));
    expect(certificate.issuer.contact.address?.city).toBe("Northtown");
    expect(certificate.software[0]?.release).toBe("");
    const nameless = text.replace("<dcc:uniqueIdentifier>INV-2020-0007<", "<dcc:uniqueIdentifier> <");
    expect(problemsOf(readDcc(new TextEncoder().encode(nameless)))[0]?.path).toMatch(/\/uniqueIdentifier$/);
  });

  it("before 3.3 a text need not be there in every language", () => {
    const text = new TextDecoder()
      .decode(fixture("dcc-3.1.2.xml"))
      .replace('<content lang="en">Range 100 mV</content>', "");
    expect(certificateOf(readDcc(new TextEncoder().encode(text))).results[0]?.name).toEqual([
      { lang: "fr", text: "Étendue 100 mV" },
    ]);
  });

  it("a hybrid may add a unit outside the SI, beside one of the SI", () => {
    const text = new TextDecoder().decode(fixture("dcc-3.2.1.xml"));
    const fahrenheit = text.replace("0.01 50.000<", "32.02 122.000<").replace("\\degreecelsius", "degF");
    const column = certificateOf(readDcc(new TextEncoder().encode(fahrenheit))).results[0]?.data.tables[0]
      ?.quantities[0]?.columns[1];
    expect(column?.units).toEqual(["degF", "degF"]);
    const [problem] = problemsOf(readDcc(new TextEncoder().encode(fahrenheit.replace("\\kelvin", "degR"))));
    expect(problem?.path).toMatch(/\/hybrid$/);
    expect(problem?.message).toContain("degR, degF");
    const offers = tableForReference(certificateOf(readDcc(new TextEncoder().encode(fahrenheit)))).offers;
    expect(offers[0]?.rows[0]).toMatchObject({ celsius: { value: 0.01, written: "273.16 \\kelvin" } });
  });

  it("3.1.2: other prefixes, two languages, a certificate behind the certificate", () => {
    const certificate = certificateOf(readDcc(fixture("dcc-3.1.2.xml"), schema));
    expect(certificate.languages).toEqual({ used: ["fr", "en"], mandatory: ["fr"] });
    expect(certificate.responsible[0]?.isMainSigner).toBe(true);
    expect(certificate.equipment[0]?.certificate).toMatchObject({
      uniqueIdentifier: "INV-2021-0990",
      linkedReport: { uniqueIdentifier: "INV-2020-0550", linkedReport: null },
    });
    expect(certificate.results[0]?.data.tables[0]?.quantities[1]?.columns[0]?.uncertainty).toMatchObject({
      kind: "expanded",
      numbers: [0.0004, 0.0004, 0.0006],
    });
    expect(certificate.signatures.isSealDeclared).toBe(true);
  });

  it("3.2.1: an interval, equipment of one quantity, conditions of one table, a signature that nobody verified", () => {
    const certificate = certificateOf(readDcc(fixture("dcc-3.2.1.xml"), schema));
    expect(certificate).toMatchObject({
      change: null,
      previousReport: { uniqueIdentifier: "INV-2023-0311" },
    });
    expect(certificate.equipment[0]?.reach).toBe("quantity");
    expect(certificate.conditions[0]).toMatchObject({ kind: "immersion", reach: "table" });
    expect(certificate.results[0]?.data.tables[0]?.quantities[1]?.columns[0]?.uncertainty).toMatchObject({
      kind: "interval",
      from: [-0.008, -0.04],
      to: [0.032, 0],
      written: ["0.010", "0.010"],
    });
    expect(certificate.signatures.xmlSignatures).toHaveLength(1);
    expect(certificate.accreditationHints.map(({ text }) => text)).toEqual([
      "Invented accreditation no. 9999: results are traceable to the SI.",
    ]);
    expect(certificate.setAside).toMatchObject([{ what: "a comment of the issuer" }]);
  });

  it.each(["2.4.0", "3.3.1", "3.4.0-rc.1", "3.10.0", "4.0.0", ""])(
    "version %j is refused by name",
    (version) => {
      const text = new TextDecoder()
        .decode(fixture("dcc-3.0.0.xml"))
        .replace('schemaVersion="3.0.0"', `schemaVersion="${version}"`);
      const [problem] = problemsOf(readDcc(new TextEncoder().encode(text)));
      expect(problem).toMatchObject({ code: "not-a-dcc", path: "/digitalCalibrationCertificate", line: 3 });
      expect(problem?.message).toContain("by hand");
    },
  );
});
