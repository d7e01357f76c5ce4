import { describe, expect, it } from "vitest";
import { checkDcc } from "@/lib/documents/dcc/check-dcc";
import { measuredSets } from "@/lib/documents/dcc/measured-set";
import { writeDcc } from "@/lib/documents/dcc/write-dcc";
import type { DccCertificate, DccTable } from "@/lib/domain/calibration/dcc-certificate";
import { CertificateContent, type CertificateRow } from "@/lib/domain/certificate/content";
import { readDcc } from "@/lib/files/dcc/read-dcc";
import { certificateOf, schema } from "@/tests/files/dcc/read-fixture";
import { bilingual, everyContent, hash, single } from "./every-content";

const all = Object.entries(everyContent);
const readBack = (content: CertificateContent): DccCertificate =>
  certificateOf(readDcc(new TextEncoder().encode(writeDcc(content, hash)), schema));
const contentOf = (name: string): CertificateContent => everyContent[name] ?? expect.fail(name);
/** A number of the content as any program reads it. */
const number = (typeset: string): number =>
  Number(typeset.replace("−", "-").replace(/\s/g, "").replace(",", "."));
const numbersOf = (table: DccTable, refType: string, unit: string): readonly (number | null)[] => {
  const quantity = table.quantities.find(({ refTypes }) => refTypes.includes(refType));
  return (
    quantity?.columns.find(({ units }) => units[0] === unit)?.numbers ?? expect.fail(`${refType} ${unit}`)
  );
};
const texts = (certificate: DccCertificate): readonly (string | null)[] =>
  certificate.statements.flatMap(({ declaration }) => declaration.map(({ text }) => text));

describe.each(all)("%s", (_, content) => {
  it("is a content as it is stored", () => {
    expect(CertificateContent.safeParse(content).error).toBeUndefined();
  });

  it("is valid by our own rules, and by the schema where it is at hand", () => {
    expect(checkDcc(writeDcc(content, hash), schema)).toEqual([]);
  });

  it("is written with the same bytes again", () => {
    expect(writeDcc(structuredClone(content), hash)).toBe(writeDcc(content, hash));
  });

  it("is read back with every number that was printed", () => {
    const results = readBack(content).results.filter(({ refTypes }) =>
      refTypes.includes("gp_measuringResult1"),
    );
    const sets = measuredSets(content);
    expect(results).toHaveLength(sets.length);
    for (const [at, { rows }] of sets.entries()) {
      const table = results[at]?.data.tables[0] ?? expect.fail("no table");
      const measured = rows.filter(({ state }) => state === "measured");
      const wanted = (of: (row: CertificateRow) => string, scale = 1) =>
        measured.map((row) => expect.closeTo(number(of(row)) / scale, 12));
      expect(numbersOf(table, "basic_calibrationValue", "\\degreecelsius")).toEqual(
        wanted((row) => row.nominalCelsius),
      );
      expect(numbersOf(table, "basic_referenceValue", "\\degreecelsius")).toEqual(
        wanted((row) => row.referenceCelsius),
      );
      expect(numbersOf(table, "emfolio_emf", "\\volt")).toEqual(wanted((row) => row.emfMicrovolt, 1e6));
      expect(numbersOf(table, "emfolio_emfDeviation", "\\volt")).toEqual(
        wanted((row) => row.deviationMicrovolt, 1e6),
      );
      expect(numbersOf(table, "basic_measurementError", "\\kelvin")).toEqual(
        wanted((row) => row.errorCelsius),
      );
      const error = table.quantities.find(({ refTypes }) => refTypes.includes("basic_measurementError"));
      const { uncertainty } = error?.columns[0] ?? expect.fail("no error");
      if (uncertainty?.kind !== "expanded") expect.fail("no U");
      expect(uncertainty.numbers).toEqual(wanted((row) => row.expandedCelsius));
      expect(uncertainty.coverageFactor).toEqual(wanted((row) => row.coverageFactor));
    }
  });

  it("says what was not measured in words, and never as a number", () => {
    const certificate = readBack(content);
    const missing = measuredSets(content).flatMap(({ rows }) =>
      rows.filter(({ state }) => state !== "measured"),
    );
    const said = certificate.results
      .flatMap(({ description }) => description.map(({ text }) => text))
      .join("\n");
    for (const { setpoint, remark } of missing) {
      expect(said).toContain(setpoint);
      expect(said).toContain(remark);
    }
    expect(writeDcc(content, hash)).not.toMatch(/NaN|undefined|null/);
  });

  it("names the certificate, its hash, whose it is, the items and who authorised it", () => {
    const certificate = readBack(content);
    expect(certificate.uniqueIdentifier).toBe(content.number);
    expect(certificate.identifications.map(({ value }) => value)).toContain(hash);
    expect(certificate.identifications.map(({ value }) => value)).toContain(content.order.purchaseOrder);
    expect([certificate.receiptDate, certificate.issueDate]).toEqual([content.receivedOn, content.issuedOn]);
    expect([certificate.beginPerformanceDate, certificate.endPerformanceDate]).toEqual([
      content.performedFrom,
      content.performedTo,
    ]);
    expect(certificate.customer.name[0]?.text).toBe(content.customer.name);
    expect(certificate.responsible.find(({ isMainSigner }) => isMainSigner)?.name[0]?.text).toBe(
      content.authorisedBy.name,
    );
    const serials = new Set((content.sets ?? [content]).map(({ item }) => item.serial));
    expect(new Set(certificate.items.map((item) => item.identifications[0]?.value))).toEqual(serials);
    expect(certificate.equipment.map(({ certificate: one }) => one?.uniqueIdentifier ?? "")).toEqual(
      measuredSets(content).flatMap(({ standards }) => standards.map((one) => one.calibrationCertificate)),
    );
  });
});

describe("what a kind of content adds", () => {
  it("an amendment and a replacement name what they change, with its hash and the reason", () => {
    for (const [name, typeOfChange] of [
      ["an amendment", "amended"],
      ["a replacement that can be checked", "substituted"],
    ] as const) {
      const { change, previousReport, ...certificate } = readBack(contentOf(name));
      expect(change).toMatchObject({ typeOfChange, replacedUniqueIdentifier: "C-2026-0003" });
      expect(previousReport).toMatchObject({ procedure: "SHA-256", value: "cd".repeat(32) });
      expect(texts(certificate as DccCertificate)).toContain(contentOf(name).amends?.reason);
    }
    const checkable = readBack(contentOf("a replacement that can be checked"));
    expect(checkable.identifications.map(({ value }) => value)).toContain(
      "https://lab.example/authenticity/abcDEF_-123",
    );
  });

  it("two languages stand side by side, and the numbers keep their point", () => {
    const xml = writeDcc(bilingual, hash);
    const certificate = readBack(bilingual);
    expect(certificate.languages).toEqual({ used: ["de", "en"], mandatory: ["de"] });
    const relates = bilingual.statements[0] ?? "";
    const statement = certificate.statements.find(({ declaration }) =>
      declaration.some(({ text }) => text === relates),
    );
    expect(statement?.declaration).toEqual([
      { lang: "de", text: `Deutsch: ${relates}` },
      { lang: "en", text: relates },
    ]);
    expect(xml).not.toMatch(/<si:valueXMLList>[^<]*,/);
    expect(xml.match(/lang="de"/g)?.length).toBe(xml.match(/lang="en"/g)?.length);
    const german = writeDcc(contentOf("German alone"), hash);
    expect(german).not.toContain('lang="en"');
  });

  it("what nobody translated stands once, for every language", () => {
    const [language] = bilingual.translations ?? [];
    const { [bilingual.sampling]: _, ...others } = language?.texts ?? {};
    const certificate = readBack({ ...bilingual, translations: [{ language: "de", texts: others }] });
    const statement = certificate.statements.find(({ references }) => references.includes("7.8.2.1 k"));
    expect(statement?.declaration).toEqual([{ lang: null, text: bilingual.sampling }]);
  });

  it("pass and fail stand with the limits they were decided by", () => {
    const [result] = readBack(single).results;
    const error = result?.data.tables[0]?.quantities.find(({ refTypes }) =>
      refTypes.includes("basic_measurementError"),
    );
    const [statement] = error?.remarks ?? [];
    expect(statement?.conformity).toEqual(["pass", "conditionalPass", "conditionalFail", "fail", "pass"]);
    const limits = Object.fromEntries(
      (statement?.data.quantities ?? []).map(({ refTypes, columns }) => [refTypes[0], columns[0]?.written]),
    );
    // The errors are −0.24, 0.63, 0.9, 1.2 and 1.4 °C; the fixture sets limits that give each its word.
    expect(limits.basic_acceptanceLimitUpper).toEqual(["0.740", "0.430", "0.300", "0.300", "1.900"]);
    expect(limits.basic_acceptanceLimitLower).toEqual(["-0.740", "-0.430", "-0.300", "-0.300", "-1.900"]);
    expect(limits.basic_toleranceLimitUpper).toEqual(["1.74", "1.43", "0.70", "0.50", "2.90"]);
  });

  it("where some rows bear no statement, the others stand once more with theirs", () => {
    const [result] = readBack(contentOf("a row not reached, and one without a tolerance")).results;
    const [main, stated] = result?.data.tables ?? [];
    expect(main?.quantities.flatMap(({ remarks }) => remarks)).toEqual([]);
    expect(
      main?.quantities.find(({ refTypes }) => refTypes.includes("emfolio_conformityState"))?.words.at(-1),
    ).toBe("no-tolerance-defined");
    expect(stated?.quantities.at(-1)?.remarks[0]?.conformity).toHaveLength(4);
  });

  it("nothing is said of conformity where nothing was agreed", () => {
    const certificate = readBack(contentOf("no statement of conformity"));
    expect(certificate.statements.filter(({ kind }) => kind === "conformity")).toEqual([]);
    expect(writeDcc(contentOf("no statement of conformity"), hash)).not.toContain("conformityXMLList");
  });

  it("results outside the scope and of a provider are marked row for row", () => {
    const certificate = readBack(contentOf("in and outside the scope, external results"));
    const [table] = certificate.results[0]?.data.tables ?? [];
    const scope = table?.quantities.find(({ refTypes }) => refTypes.includes("emfolio_scope"));
    expect(scope?.words).toEqual(["outside", "inside", "inside", "inside", "inside"]);
    const remarks = table?.quantities.flatMap((quantity) => quantity.remarks) ?? [];
    const source = remarks.find(({ refTypes }) => refTypes.includes("emfolio_source"));
    expect(source?.data.quantities[0]?.words).toEqual(["external", "external", "own", "own", "own"]);
    expect(certificate.issuer.code).toBe("INV 0000");
    expect(certificate.equipment[0]?.certificate).toMatchObject({
      procedure: "SHA-256",
      value: "12".repeat(32),
    });
    expect(certificate.equipment[1]?.certificate).toMatchObject({ procedure: "none", value: "none" });
  });

  it("opinions, history, exclusions and the form agreed are said, each as what it is", () => {
    const content = contentOf("opinions, history, exclusions, simplified, at the customer's site");
    const certificate = readBack(content);
    expect(certificate.performanceLocation).toBe("customer");
    for (const wanted of [
      content.formStatement,
      ...(content.thermalHistory ?? []),
      ...(content.exclusions ?? []),
      ...(content.repeats ?? []),
      content.evidenceStatement,
      content.evidence.exception,
    ])
      expect(texts(certificate)).toContain(wanted);
    const opinion = certificate.statements.find(({ refTypes }) => refTypes.includes("emfolio_opinion"));
    expect(opinion).toMatchObject({ references: ["7.8.7"], date: "2026-10-16" });
    expect(opinion?.declaration.map(({ text }) => text)).toEqual([
      "It may last.",
      "Basis: Drift so far.",
      "Odile Marchetti",
    ]);
  });

  it("two sets are told apart as before and after", () => {
    const content = contentOf("two sets, before and after annealing");
    const certificate = readBack(content);
    const of = (set: string) => certificate.conditions.filter(({ status }) => status === set);
    expect([of("beforeAdjustment").length, of("afterAdjustment").length]).toEqual([1, 1]);
    const change = certificate.results.find(({ refTypes }) => refTypes.includes("emfolio_change"));
    expect(change?.data.tables[0]?.quantities[1]?.columns[0]?.written).toEqual(
      content.changes?.[0]?.rows.map((row) => row.changeCelsius.replace("−", "-")),
    );
  });

  it("a lot bears its items, its average and its budgets", () => {
    const content = contentOf("a lot with budgets");
    const certificate = readBack(content);
    expect(certificate.items).toHaveLength(3);
    const lot = certificate.results.find(({ refTypes }) => refTypes.includes("emfolio_lot"));
    expect(lot?.data.tables[0]?.quantities.map(({ columns }) => columns[0]?.numbers[1])).toEqual([
      1273.15,
      3,
      ...["averageErrorCelsius", "smallestErrorCelsius", "largestErrorCelsius", "halfRangeCelsius"].map(
        (key) => number(String(content.lot?.rows[1]?.[key as "averageErrorCelsius"])),
      ),
    ]);
    const budgets = certificate.results.filter(({ refTypes }) => refTypes.includes("emfolio_budget"));
    expect(budgets).toHaveLength(content.budgets?.length ?? -1);
  });

  it("a function bears its coefficients in D-SI units, and a table in °F stands in kelvin too", () => {
    const certificate = readBack(contentOf("a function with a table in °F"));
    const fitted = certificate.results.find(({ refTypes }) => refTypes.includes("emfolio_corrections"));
    const [, coefficients, table] = fitted?.data.tables ?? [];
    expect(
      coefficients?.quantities.map(({ columns }) => [columns[0]?.numbers[0], columns[0]?.units[0]]),
    ).toEqual([
      [0, "\\micro\\volt"],
      [-5.93e-2, "\\micro\\volt\\per\\degreecelsius"],
      [8.71e-5, "\\micro\\volt\\per\\degreecelsius\\tothe{2}"],
    ]);
    const temperatures = table?.quantities[0]?.columns ?? [];
    expect(temperatures[1]?.units[0]).toBe("°F");
    // 600 °F is 588.70555… K; a correction of 0.2 °F is 0.1111… K.
    expect(temperatures[0]?.written[0]).toBe("588.70556");
    expect(table?.quantities[1]?.columns[0]?.written[1]).toBe("-0.1111");
  });

  it("setpoints ordered in °F keep their label", () => {
    const [result] = readBack(contentOf("setpoints in °F, composed")).results;
    expect(result?.data.tables[0]?.quantities[0]?.columns[0]?.labels).toEqual(["1200_°F", "1600_°F"]);
  });

  it("without a country known, the certificate does not pass", () => {
    const { countryCode: _, ...laboratory } = single.laboratory;
    const found = checkDcc(writeDcc({ ...single, laboratory }, hash));
    expect(found.map(({ path }) => path)).toContain(
      "/digitalCalibrationCertificate/administrativeData/coreData/countryCodeISO3166_1",
    );
  });
});
