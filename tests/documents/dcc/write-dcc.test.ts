import { describe, expect, it } from "vitest";
import { checkDcc } from "@/lib/documents/dcc/check-dcc";
import { measuredSets } from "@/lib/documents/dcc/measured-set";
import { writeDcc } from "@/lib/documents/dcc/write-dcc";
import { CertificateContent, type CertificateRow } from "@/lib/domain/certificate/content";
import { schema } from "@/tests/files/dcc/read-fixture";
import { everyContent, hash } from "./every-content";
import { number, numbersOf, readBack } from "./read-back";

const all = Object.entries(everyContent);

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
