import { expect, it } from "vitest";
import {
  celsiusInKelvin,
  fahrenheitDifferenceInKelvin,
  fahrenheitInKelvin,
  inLargerUnit,
  plainNumber,
} from "@/lib/documents/dcc/plain-number";
import { element, xmlDocument } from "@/lib/documents/dcc/xml";
import { withXml } from "@/lib/files/dcc/with-xml";

it("writes what a parser reads back, whatever stands in the text", () => {
  const nasty = `a & b < c > d ]]> "quoted" 'single' \u00e4 \u{1F525} \u2212`;
  const text = xmlDocument(element("root", [element("leaf", nasty, { id: `x"<&\n\ty` })]));
  const leaf = withXml(
    new TextEncoder().encode(text),
    (problem) => expect.fail(problem.message),
    (root) => root.children[0],
  );
  expect(leaf?.text).toBe(nasty);
  expect(leaf?.attributes.get("id")).toBe(`x"<&\n\ty`);
});

it("keeps characters that XML cannot hold out of the file", () => {
  expect(xmlDocument(element("a", "x\u0000y\u000bz\ud800"))).toContain("x\ufffdy\ufffdz\ufffd");
  expect(xmlDocument(element("a", "a\rb"))).toContain("a&#13;b");
});

it("leaves out parts that are not there", () => {
  expect(xmlDocument(element("a", [null, element("b", "1", { c: null })]))).toBe(
    '<?xml version="1.0" encoding="UTF-8"?>\n<a>\n  <b>1</b>\n</a>\n',
  );
});

it.each([
  ["−0.24", "-0.24"],
  ["12\u202f199", "12199"],
  ["1100,4", "1100.4"],
  ["-5.93e-2", "-5.93e-2"],
])("takes %s out of its typesetting", (typeset, plain) => expect(plainNumber(typeset)).toBe(plain));

it.each([
  ["12199", "0.012199"],
  ["-10", "-0.000010"],
  ["0", "0.000000"],
  ["1234567.8", "1.2345678"],
  ["NaN", "NaN"],
])("%s µV is %s V, digit for digit", (micro, volt) => expect(inLargerUnit(micro, 6)).toBe(volt));

it.each([
  ["0", "273.15"],
  ["1100.4", "1373.55"],
  ["-273.15", "0.00"],
  ["-300.1", "-26.95"],
  ["99.995", "373.145"],
])("%s °C is %s K, exactly", (celsius, kelvin) => expect(celsiusInKelvin(celsius)).toBe(kelvin));

it.each([
  ["32", "273.15000"],
  ["212", "373.15000"],
  ["600", "588.70556"],
  ["-459.67", "0.00000"],
])("%s °F is %s K, rounded once", (fahrenheit, kelvin) =>
  expect(fahrenheitInKelvin(fahrenheit)).toBe(kelvin),
);

it.each([
  ["1.8", "1.0000"],
  ["-0.2", "-0.1111"],
  ["0.1", "0.0556"],
])("a difference of %s °F is %s K", (fahrenheit, kelvin) =>
  expect(fahrenheitDifferenceInKelvin(fahrenheit)).toBe(kelvin),
);
