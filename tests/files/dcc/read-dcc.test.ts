import { describe, expect, it } from "vitest";
import { readDcc } from "@/lib/files/dcc/read-dcc";
import { certificateOf, demonstration, example, fixture, schema } from "./read-fixture";

describe("the published temperature example (DCC 3.3.0, Pt100)", () => {
  const bytes = example("dcclib_valid.xml");
  if (bytes === null) {
    it("is not at hand; the other certificates of this folder are read all the same", () => {
      expect(certificateOf(readDcc(fixture("dcc-3.2.1.xml"))).schemaVersion).toBe("3.2.1");
    });
    return;
  }
  const certificate = certificateOf(readDcc(bytes, schema));

  it("gives what stands at its head", () => {
    expect(certificate).toMatchObject({
      uniqueIdentifier: "1234",
      schemaVersion: "3.3.0",
      isCheckedBySchema: schema !== undefined,
      countryCode: "DE",
      languages: { used: ["en", "de"], mandatory: ["en"] },
      receiptDate: "1957-08-13",
      beginPerformanceDate: "1957-08-13",
      endPerformanceDate: "1957-08-13",
      issueDate: null,
      performanceLocation: "laboratory",
      change: null,
      previousReport: null,
    });
    expect(certificate.identifications).toMatchObject([
      { issuer: "calibrationLaboratory", value: "string-calibrationLaboratory-coreData" },
    ]);
    expect(certificate.software).toMatchObject([
      { name: [{ lang: null, text: "Notepad++ (32-bit)" }], release: "v8.2" },
    ]);
  });

  it("gives issuer, customer and persons", () => {
    expect(certificate.issuer).toMatchObject({
      code: null,
      contact: {
        name: [{ lang: null, text: "Kalibrierfirma GmbH" }],
        eMail: "info@kalibrierfirma.xx",
        phone: "+49 123 4567-89",
        address: {
          street: "Musterstraße",
          streetNo: "1",
          postCode: "00900",
          city: "Musterstadt",
          countryCode: "DE",
        },
      },
    });
    expect(certificate.customer.address?.further).toEqual([
      { lang: "de", text: "Kunden Nr. 1024418" },
      { lang: "en", text: "Customer ID no. 1024418" },
    ]);
    expect(certificate.responsible.map(({ name, isMainSigner }) => [name[0]?.text, isMainSigner])).toEqual([
      ["Michaela Musterfrau", true],
      ["Michael Mustermann", false],
    ]);
    expect(certificate.signatures).toEqual({
      xmlSignatures: [],
      isSealDeclared: false,
      isSignatureDeclared: false,
      isTimeStampDeclared: false,
    });
  });

  it("gives the item by whose number it is", () => {
    const [item] = certificate.items;
    expect(item?.model).toBe("String");
    expect(item?.identifications.map(({ issuer, value }) => [issuer, value])).toEqual([
      ["manufacturer", "string-manufacturer-item"],
      ["customer", "string-customer-item"],
      ["calibrationLaboratory", "string-calibrationLaboratory-item"],
    ]);
    expect(certificate.embeddedFiles).toMatchObject([{ fileName: "test.txt", mimeType: "text/plain" }]);
  });

  it("tells the statements apart", () => {
    expect(certificate.statements.map(({ kind }) => kind)).toEqual([
      "other",
      "validity-range",
      "conformity",
      "recalibration",
    ]);
    expect(certificate.statements[1]?.data.quantities.map(({ columns }) => columns[0]?.numbers)).toEqual([
      [306],
      [593],
    ]);
    expect(certificate.statements[2]?.conformity).toEqual(["pass"]);
    expect(certificate.statements[3]?.date).toBe("1959-10-22");
    expect(certificate.statements[3]?.authority?.name).toEqual([{ lang: null, text: "Kunde GmbH" }]);
  });

  it("gives method, equipment and conditions", () => {
    expect(certificate.methods.map(({ norms, reach }) => [norms, reach])).toEqual([
      [["GUM"], "result"],
      [["DKD-R 5-1:2018"], "result"],
    ]);
    expect(certificate.equipment).toMatchObject([
      { refTypes: ["basic_normalUsed"], certificate: null, reach: "result" },
    ]);
    expect(
      certificate.conditions.map(({ kind, data }) => [
        kind,
        data.quantities.map(({ columns }) => [columns[0]?.written[0], columns[0]?.units[0]]),
      ]),
    ).toEqual([
      ["immersion", [["0.1", "\\metre"]]],
      [
        "ambient",
        [
          ["293", "\\kelvin"],
          ["299", "\\kelvin"],
        ],
      ],
      [
        "ambient",
        [
          ["0.20", "\\one"],
          ["0.70", "\\one"],
        ],
      ],
    ]);
  });

  it("gives the table, strings and numbers, with U, k, p and distribution spread over its rows", () => {
    const [table] = certificate.results[0]?.data.tables ?? [];
    const [reference, indication, error] = table?.quantities ?? [];
    expect(table?.refTypes).toEqual(["gp_table1"]);
    expect(reference).toMatchObject({ kind: "hybrid", refTypes: ["basic_referenceValue"] });
    expect(reference?.columns.map(({ written, units }) => [units[0], written])).toEqual([
      ["\\kelvin", ["306.248", "373.121", "448.253", "523.319", "593.154"]],
      ["\\degreecelsius", ["33.098", "99.971", "175.103", "250.169", "320.004"]],
    ]);
    expect(reference?.remarks[0]?.data.quantities[0]?.columns[1]?.numbers).toEqual([
      32.85, 99.85, 174.85, 249.85, 319.85,
    ]);
    expect(indication?.columns[1]?.numbers).toEqual([33.17, 100.06, 175.21, 250.16, 319.92]);
    expect(error?.columns[0]?.numbers).toEqual([0.072, 0.089, 0.107, -0.009, -0.084]);
    expect(error?.columns[0]?.uncertainty).toMatchObject({
      kind: "expanded",
      numbers: [0.061, 0.061, 0.061, 0.061, 0.061],
      coverageFactor: [2, 2, 2, 2, 2],
      coverageProbability: [0.95, 0.95, 0.95, 0.95, 0.95],
      distribution: ["normal", "normal", "normal", "normal", "normal"],
      place: { line: 404 },
    });
    expect(error?.remarks[0]?.data.quantities[1]?.columns[0]?.written).toEqual([
      "0.23",
      "0.23",
      "0.23",
      "0.30",
      "0.30",
    ]);
  });
});

describe("the type N example (DCC 3.3.0)", () => {
  const bytes = example("dcc-thermocouple-typeN-3.3.0.xml");
  it("is read whole, with the certificate it replaces and what stands behind it", () => {
    if (bytes === null) return expect(bytes).toBeNull();
    const certificate = certificateOf(readDcc(bytes, schema));
    expect(certificate).toMatchObject({
      uniqueIdentifier: "TC-2026-000123",
      issueDate: "2026-11-12",
      change: { typeOfChange: "substituted", replacedUniqueIdentifier: "TC-2026-000119" },
      previousReport: {
        uniqueIdentifier: "TC-2026-000119",
        procedure: "SHA-256",
        value: "9f86d081884c7d659a2feaa0c55ad015a3bf4f1b2b0b822cd15d6c15b0f00a08",
      },
      issuer: { code: "LAB-0000" },
      signatures: {
        xmlSignatures: [],
        isSealDeclared: true,
        isSignatureDeclared: true,
        isTimeStampDeclared: true,
      },
      equipment: [
        {
          id: "ref1",
          identifications: [{ value: "REF-S-02" }],
          certificate: {
            uniqueIdentifier: "NMI-2026-55501",
            inValidityRange: true,
            traceable: true,
            linkedReport: null,
          },
        },
      ],
    });
    expect(certificate.statements.map(({ kind }) => kind)).toEqual(["traceability", "other", "conformity"]);
    const emf = certificate.results[0]?.data.tables[0]?.quantities[1]?.columns[0];
    expect(emf?.written).toEqual(["0.020613", "0.028455", "0.036256"]);
    expect(emf?.uncertainty?.written).toEqual(["0.000040", "0.000040", "0.000046"]);
    const deviation = certificate.results[0]?.data.tables[0]?.quantities[2];
    expect(deviation?.columns[0]?.labels).toEqual(["600C", "800C", "1000C"]);
    expect(deviation?.remarks[0]?.conformity).toEqual(["pass", "pass", "pass"]);
  });
});

describe("the certificate of the demonstration", () => {
  it("is whole by our rules, and by the schema where it is at hand", () => {
    const certificate = certificateOf(readDcc(demonstration(), schema));
    expect(certificate.isCheckedBySchema).toBe(schema !== undefined);
    expect(certificate.equipment.map((equipment) => equipment.certificate?.uniqueIdentifier)).toEqual([
      "NIM-2026-3302",
      "NIM-2026-3303",
      "CES-26-0715",
    ]);
    expect(certificate.equipment[0]?.certificate?.linkedReport?.uniqueIdentifier).toBe("NIM-FP-Cu-0092");
    expect(certificate.accreditationHints).toHaveLength(1);
  });

  it("amended, it names the one it amends", () => {
    const amended = new TextDecoder()
      .decode(demonstration())
      .replace(
        "</dcc:issueDate>",
        "</dcc:issueDate><dcc:reportAmendedSubstituted><dcc:typeOfChange>amended</dcc:typeOfChange><dcc:replacedUniqueIdentifier>NTL-26-11200</dcc:replacedUniqueIdentifier></dcc:reportAmendedSubstituted>",
      );
    const { change } = certificateOf(readDcc(new TextEncoder().encode(amended), schema));
    expect(change).toMatchObject({ typeOfChange: "amended", replacedUniqueIdentifier: "NTL-26-11200" });
  });

  it("says that it is invented", () => {
    expect(new TextDecoder().decode(demonstration())).toContain("INVENTED");
  });
});
