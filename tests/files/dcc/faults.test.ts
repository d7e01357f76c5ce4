import { describe, expect, it } from "vitest";
import { readDcc } from "@/lib/files/dcc/read-dcc";
import { demonstration, problemsOf, schema } from "./read-fixture";

const good = new TextDecoder().decode(demonstration());

/** Replaces one passage, which must be there, and tells the line it stands on. */
const changed = (
  from: string,
  to: string,
  base = good,
): { readonly bytes: Uint8Array; readonly line: number } => {
  const at = base.indexOf(from);
  if (at < 0) throw new Error(`The certificate has no ${from}`);
  return {
    bytes: new TextEncoder().encode(base.slice(0, at) + to + base.slice(at + from.length)),
    line: base.slice(0, at).split("\n").length,
  };
};

const between = (start: string, end: string): string =>
  good.slice(good.indexOf(start), good.indexOf(end) + end.length);

const results =
  "/digitalCalibrationCertificate/measurementResults/measurementResult/results/result/data/list";
const core = "/digitalCalibrationCertificate/administrativeData/coreData";

/** The faults that were planted when the schema was tried; the schema alone lets the last four pass. */
const planted: readonly (readonly [string, string, string, string, string])[] = [
  [
    "no customer",
    between("<dcc:customer>", "</dcc:customer>"),
    "",
    "structure",
    "/digitalCalibrationCertificate/administrativeData",
  ],
  [
    "no unique identifier",
    "<dcc:uniqueIdentifier>NTL-26-11207</dcc:uniqueIdentifier>",
    "",
    "structure",
    core,
  ],
  ["a date that is none", "2026-09-16", "2026-02-30", "value", `${core}/endPerformanceDate`],
  [
    "a country that is none",
    "<dcc:countryCode>GB",
    "<dcc:countryCode>ZQ",
    "value",
    "/digitalCalibrationCertificate/administrativeData/calibrationLaboratory/contact/location/countryCode",
  ],
  [
    "k below 1",
    "<si:coverageFactorXMLList>2<",
    "<si:coverageFactorXMLList>0.5<",
    "value",
    `${results}/quantity[2]/realListXMLList/measurementUncertaintyUnivariateXMLList/expandedMUXMLList/coverageFactorXMLList`,
  ],
  [
    "a negative U",
    "3.4 3.7",
    "-3.4 3.7",
    "value",
    `${results}/quantity[2]/realListXMLList/measurementUncertaintyUnivariateXMLList/expandedMUXMLList/valueExpandedMUXMLList`,
  ],
  ["a decimal comma", "3405.7", "3405,7", "value", `${results}/quantity[2]/realListXMLList/valueXMLList`],
  [
    "a word of conformity that is none",
    "</dcc:declaration>",
    "</dcc:declaration><dcc:conformity>passed</dcc:conformity>",
    "value",
    "/digitalCalibrationCertificate/administrativeData/statements/statement[1]/conformity",
  ],
  [
    "a version that is none",
    'schemaVersion="3.3.0"',
    'schemaVersion="3.3"',
    "not-a-dcc",
    "/digitalCalibrationCertificate",
  ],
  [
    "a probability in percent",
    "<si:coverageProbabilityXMLList>0.95<",
    "<si:coverageProbabilityXMLList>95<",
    "value",
    `${results}/quantity[2]/realListXMLList/measurementUncertaintyUnivariateXMLList/expandedMUXMLList/coverageProbabilityXMLList`,
  ],
  [
    "fewer U than values",
    "3.4 3.7 ",
    "3.7 ",
    "length",
    `${results}/quantity[2]/realListXMLList/measurementUncertaintyUnivariateXMLList/expandedMUXMLList/valueExpandedMUXMLList`,
  ],
  [
    "a beginning after the end",
    "<dcc:beginPerformanceDate>2026-09-14",
    "<dcc:beginPerformanceDate>2026-09-17",
    "contradiction",
    `${core}/endPerformanceDate`,
  ],
  [
    "an unknown unit",
    "\\micro\\volt",
    "\\micro\\voltt",
    "value",
    `${results}/quantity[2]/realListXMLList/unitXMLList`,
  ],
  [
    "a reference that leads nowhere",
    '<dcc:influenceCondition refType="basic_temperature">',
    '<dcc:influenceCondition refType="basic_temperature" refId="nobody">',
    "reference",
    "/digitalCalibrationCertificate/measurementResults/measurementResult/influenceConditions/influenceCondition[1]",
  ],
];

describe.each([
  ["by our own rules alone", undefined],
  ["with the schema too, where it is at hand", schema],
])("the fourteen planted faults, %s", (_, files) => {
  it.each(planted)("%s", (_name, from, to, code, path) => {
    const problems = problemsOf(readDcc(changed(from, to).bytes, files));
    const found = problems.find((problem) => problem.code === code && problem.path === path);
    expect(found, JSON.stringify(problems, null, 1)).toBeDefined();
    expect(found?.line).toBeGreaterThan(0);
    expect(found?.message).toMatch(/[.:]$|\.$/);
  });

  it("are fourteen", () => expect(planted).toHaveLength(14));
});

/** Our further rules: name, what is changed into what, the code, and a word of the message that carries the remedy. */
const further: readonly (readonly [string, string, string, string, RegExp])[] = [
  [
    "an issue before the end",
    "<dcc:issueDate>2026-09-18",
    "<dcc:issueDate>2026-09-15",
    "contradiction",
    /before endPerformanceDate/,
  ],
  [
    "a receipt after the end",
    "<dcc:receiptDate>2026-09-07",
    "<dcc:receiptDate>2026-10-07",
    "contradiction",
    /before receiptDate/,
  ],
  [
    "a language code that is none",
    "<dcc:usedLangCodeISO639_1>en",
    "<dcc:usedLangCodeISO639_1>xx",
    "value",
    /ISO 639-1/,
  ],
  [
    "a language nobody declared",
    '<dcc:content lang="en">Emf<',
    '<dcc:content lang="de">Emf<',
    "contradiction",
    /usedLangCodeISO639_1/,
  ],
  [
    "a text missing in a language declared",
    "<dcc:mandatoryLang",
    "<dcc:usedLangCodeISO639_1>de</dcc:usedLangCodeISO639_1><dcc:mandatoryLang",
    "structure",
    /missing in de/,
  ],
  [
    "a name twice in one language",
    '<dcc:content lang="en">Emf</dcc:content>',
    '<dcc:content lang="en">Emf</dcc:content><dcc:content lang="en">EMF</dcc:content>',
    "contradiction",
    /twice in "en"/,
  ],
  [
    "an id given twice",
    'id="standard2"',
    'id="standard1"',
    "reference",
    /given to .*measuringEquipment\[1\] already/,
  ],
  ["an id with a blank", 'id="standard2"', 'id="standard 2"', "value", /no blanks/],
  [
    "blanks around a word",
    "<dcc:referralID>CES-26-0715<",
    "<dcc:referralID> CES-26-0715<",
    "value",
    /blanks around it/,
  ],
  ["blanks around a date", "2026-09-16<", "2026-09-16 <", "value", /blanks around it/],
  ["a word left empty", "<dcc:value>EM-R-1107<", "<dcc:value><", "value", /empty/],
  [
    "kelvin and Celsius that differ",
    "673.15",
    "673.16",
    "contradiction",
    /Value 2 is 400\.00 \\degreecelsius here and 673\.16/,
  ],
  ["a hybrid with a row too few", "250.00 400.00 ", "400.00 ", "length", /5 values, the first one 6/],
  ["a column with a row too few", "1922.3 3405.7 ", "3405.7 ", "length", /5 values in a table of 6 rows/],
  [
    "labels for some of the rows",
    "<si:valueXMLList>1922.3",
    "<si:labelXMLList>a b</si:labelXMLList><si:valueXMLList>1922.3",
    "length",
    /labelXMLList has 2 members/,
  ],
  [
    "conformity of some of the rows",
    "</dcc:quantity>\n            </dcc:list>",
    "<dcc:measurementMetaData><dcc:metaData><dcc:conformityXMLList>pass fail</dcc:conformityXMLList></dcc:metaData></dcc:measurementMetaData></dcc:quantity></dcc:list>",
    "length",
    /2 members for 6 values/,
  ],
  [
    "a limit for some of the rows",
    "</dcc:quantity>\n            </dcc:list>",
    "<dcc:measurementMetaData><dcc:metaData><dcc:data><dcc:quantity><si:realListXMLList><si:valueXMLList>1 2</si:valueXMLList><si:unitXMLList>\\volt</si:unitXMLList></si:realListXMLList></dcc:quantity></dcc:data></dcc:metaData></dcc:measurementMetaData></dcc:quantity></dcc:list>",
    "length",
    /2 values and speaks of a column with 6/,
  ],
  [
    "moments for some of the rows",
    '<dcc:list refType="gp_table1">',
    '<dcc:list refType="gp_table1"><dcc:dateTimeXMLList>2026-09-14T10:00:00Z 2026-09-14T11:00:00Z</dcc:dateTimeXMLList>',
    "length",
    /2 members in a table of 6 rows/,
  ],
  [
    "a moment that is none",
    '<dcc:list refType="gp_table1">',
    '<dcc:list refType="gp_table1"><dcc:dateTime>2026-09-14T25:00:00Z</dcc:dateTime>',
    "value",
    /14:05:00Z/,
  ],
  [
    "an empty list",
    "<si:distributionXMLList>normal<",
    "<si:distributionXMLList> <",
    "value",
    /list is empty/,
  ],
  [
    "a unit outside the SI without its definition",
    "<dcc:traceable>true</dcc:traceable>\n        <dcc:norm>",
    "<dcc:nonSIUnit>mmHg</dcc:nonSIUnit><dcc:traceable>true</dcc:traceable>\n        <dcc:norm>",
    "structure",
    /without its nonSIDefinition/,
  ],
  [
    "a definition without its unit",
    "<dcc:traceable>true</dcc:traceable>\n        <dcc:norm>",
    "<dcc:nonSIDefinition>133 Pa</dcc:nonSIDefinition><dcc:traceable>true</dcc:traceable>\n        <dcc:norm>",
    "structure",
    /without the nonSIUnit/,
  ],
  [
    "no methods for a quantity",
    between("<dcc:usedMethods>", "</dcc:usedMethods>"),
    "",
    "structure",
    /usedMethods is given/,
  ],
  [
    "no conditions for a quantity",
    between("<dcc:influenceConditions>", "</dcc:influenceConditions>"),
    "",
    "structure",
    /influenceConditions is given/,
  ],
  [
    "two forms of one value",
    "<si:hybrid>",
    "<si:real><si:value>1</si:value><si:unit>\\kelvin</si:unit></si:real><si:hybrid>",
    "structure",
    /only one of them/,
  ],
  ["a quantity without a value", between("<si:hybrid>", "</si:hybrid>"), "", "structure", /holds none of/],
  [
    "an element nobody knows",
    "<dcc:role>",
    "<dcc:rank>1</dcc:rank><dcc:role>",
    "structure",
    /rank is not known in respPerson/,
  ],
  [
    "an element of another namespace",
    "<dcc:role>",
    '<x:role xmlns:x="urn:x">1</x:role><dcc:role>',
    "structure",
    /namespace "urn:x"/,
  ],
  [
    "an element twice",
    "<dcc:model>",
    "<dcc:model>other</dcc:model><dcc:model>",
    "structure",
    /stands here 2 times/,
  ],
  [
    "an attribute nobody knows",
    '<dcc:item id="item">',
    '<dcc:item id="item" colour="red">',
    "structure",
    /attribute colour/,
  ],
  [
    "text beside elements",
    "<dcc:items>",
    "<dcc:items>see overleaf",
    "structure",
    /"see overleaf" stands in items/,
  ],
  [
    "an element where a value belongs",
    "<dcc:model>0.5 mm",
    "<dcc:model><dcc:content/>0.5 mm",
    "structure",
    /only a value belongs/,
  ],
  [
    "an issuer of a number that is none",
    "<dcc:issuer>manufacturer<",
    "<dcc:issuer>maker<",
    "value",
    /manufacturer, calibrationLaboratory/,
  ],
  ["a boolean in words", "<dcc:mainSigner>true<", "<dcc:mainSigner>yes<", "value", /true, false/],
  [
    "a relative uncertainty that is not U divided by the value",
    '</si:realListXMLList>\n              </dcc:quantity>\n              <dcc:quantity refType="basic_measurementError',
    '</si:realListXMLList><dcc:relativeUncertainty><dcc:relativeUncertaintySingle><si:value>0.5</si:value><si:unit>\\one</si:unit></dcc:relativeUncertaintySingle></dcc:relativeUncertainty></dcc:quantity><dcc:quantity refType="basic_measurementError',
    "contradiction",
    /0\.5 of value 1 is not its U of 3\.4 divided by 1922\.3/,
  ],
];

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
