import { describe, expect, it } from "vitest";
import { readDcc } from "@/lib/files/dcc/read-dcc";
import { between, changed } from "./change-passage";
import { problemsOf, schema } from "./read-fixture";

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
