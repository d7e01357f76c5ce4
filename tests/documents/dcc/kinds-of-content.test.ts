import { describe, expect, it } from "vitest";
import { checkDcc } from "@/lib/documents/dcc/check-dcc";
import { writeDcc } from "@/lib/documents/dcc/write-dcc";
import type { DccCertificate } from "@/lib/domain/calibration/dcc-certificate";
import type { CertificateContent } from "@/lib/domain/certificate/content";
import { schema } from "@/tests/files/dcc/read-fixture";
import { bilingual, everyContent, hash, single } from "./every-content";
import { number, numbersOf, readBack } from "./read-back";

const contentOf = (name: string): CertificateContent => everyContent[name] ?? expect.fail(name);
const texts = (certificate: DccCertificate): readonly (string | null)[] =>
  certificate.statements.flatMap(({ declaration }) => declaration.map(({ text }) => text));

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
    const changed = texts(readBack(contentOf("an amendment that says what it changes")) as DccCertificate);
    expect(changed).toContain("Serial number: was “HX-K-4417”, now “HX-K-4471”");
    expect(changed).toContain("Purchase order: was “PO-1”, now nothing");
    const checkable = readBack(contentOf("a replacement that can be checked"));
    const named = checkable.identifications.map(({ value }) => value);
    expect(named).toContain("https://lab.example/authenticity/abcDEF_-123");
    expect(named).toContain(`4711 ${"ef".repeat(32)}`);
  });

  it("the room stands as figures, and its terms are defined only where it does", () => {
    const { conditions } = readBack(contentOf("the room told"));
    const ambient = conditions.filter(({ kind }) => kind === "ambient");
    expect(ambient.map(({ refTypes }) => refTypes)).toEqual([
      ["emfolio_ambientTemperature"],
      ["emfolio_ambientHumidity"],
    ]);
    const xml = writeDcc(contentOf("the room told"), hash);
    expect(xml).toContain("<si:valueXMLList>296.25 296.75</si:valueXMLList>");
    expect(xml).toContain("emfolio_ambientTemperature: ");
    expect(writeDcc(single, hash)).not.toContain("ambient");
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

  it("a roll bears both its ends, their average and half range, by name in each language", () => {
    const certificate = readBack(contentOf("a lot of one roll, in two languages"));
    const [, roll] = certificate.results.filter(({ refTypes }) => refTypes.includes("emfolio_lot"));
    expect(roll?.data.tables[0]?.quantities.map(({ columns }) => columns[0]?.numbers[1])).toEqual([
      1273.15, 0, 1, 0.5, 0.5,
    ]);
    expect(writeDcc(contentOf("a lot of one roll, in two languages"), hash)).toContain(
      "Los 7, Rolle 12: T-first / T-second",
    );
  });

  it("budgets stand in columns, with their lines named in each language", () => {
    const content = contentOf("composed in two languages, with budgets and a signature's meaning");
    const certificate = readBack(content);
    const [budget] = certificate.results.filter(({ refTypes }) => refTypes.includes("emfolio_budget"));
    const [table] = budget?.data.tables ?? [];
    const [lines] = content.budgets ?? [];
    const named = table?.quantities.filter(({ refTypes }) => refTypes.includes("emfolio_budgetLine"));
    const german = content.translations?.[0]?.texts ?? {};
    expect(named?.map(({ words }) => words[0]?.replaceAll("_", " "))).toEqual([
      lines?.lines[0]?.label,
      german[lines?.lines[0]?.label ?? ""],
    ]);
    expect(numbersOf(table ?? expect.fail(), "emfolio_budget", "\\kelvin")).toEqual(
      lines?.lines.map((line) => Number(line.effectCelsius)),
    );
    expect(writeDcc(content, hash)).toContain("2026-03-05T09:12:00.000Z");
  });

  it("a lot of forty sensors at eight setpoints with its budgets is no larger than can be read", () => {
    const content = contentOf("composed in two languages, with budgets and a signature's meaning");
    const [set] = content.sets ?? expect.fail();
    const [row] = set?.rows ?? expect.fail();
    const [budget] = content.budgets ?? expect.fail();
    const [line] = budget?.lines ?? expect.fail();
    if (!set || !row || !budget || !line) expect.fail();
    const { changes: _, lot: __, ...alone } = content;
    const tags = Array.from({ length: 40 }, (___, at) => `T-${at}`);
    const large: CertificateContent = {
      ...alone,
      sets: tags.map((tag) => ({
        ...set,
        kind: "as-received",
        item: { ...set.item, tag, serial: `S-${tag}` },
        rows: Array.from({ length: 8 }, () => row),
      })),
      budgets: tags.flatMap((tag) =>
        Array.from({ length: 8 }, () => ({ ...budget, tag, lines: Array.from({ length: 28 }, () => line) })),
      ),
    };
    expect(checkDcc(writeDcc(large, hash), schema)).toEqual([]);
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
