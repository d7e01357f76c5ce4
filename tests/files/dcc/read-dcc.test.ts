import { describe, expect, it } from "vitest";
import { readDcc } from "@/lib/files/dcc/read-dcc";
import { certificateOf, demonstration, example, fixture, problemsOf, schema } from "./read-fixture";

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
    expect(certificate.change).toMatchObject({
      typeOfChange: "amended",
      replacedUniqueIdentifier: "INV-2023-0311",
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

  it("says that it is invented", () => {
    expect(new TextDecoder().decode(demonstration())).toContain("INVENTED");
  });
});
