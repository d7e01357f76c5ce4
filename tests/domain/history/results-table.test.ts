import { expect, it } from "vitest";
import { english } from "@/lib/domain/certificate/catalogue/settle";
import type { CertificateRow } from "@/lib/domain/certificate/content";
import { allInScope, someOutsideScope } from "@/lib/domain/certificate/texts";
import { fahrenheitDifference, resultColumns, resultRows } from "@/lib/domain/history/results-table";

it.each([
  ["1.3", "2.34"],
  ["\u22120.05", "-0.090"],
  ["+2", "3.6"],
  ["0.0", "0.00"],
  ["12.50", "22.500"],
  ["", ""],
  ["n/a", ""],
])("says %s °C apart as %s °F apart, rounding nothing", (celsius, fahrenheit) => {
  expect(fahrenheitDifference(celsius)).toBe(fahrenheit);
});

const row = (setpoint: string) =>
  ({
    ...{
      state: "measured",
      setpoint,
      errorCelsius: "\u22121.3",
      expandedCelsius: "1.1",
      coverageFactor: "2.00",
    },
    ...{ deviationMicrovolt: "-52", expandedMicrovolt: "44", remark: "", conformity: { state: "pass" } },
  }) as CertificateRow;

it("is one row a result, in the customer's unit, with the certificate's figures beside it", () => {
  const source = {
    ...{ number: "C-1", issuedOn: "2026-03-05", performedTo: "2026-03-04" },
    order: { number: "O-1", purchaseOrder: "=PO" },
    item: { serial: "S1", tag: "T-1", typeLetter: "K" },
    rows: [row("600 °F"), row("1000 °C")],
  } as unknown as Parameters<typeof resultRows>[0];
  const named = resultRows(source).map((cells) =>
    Object.fromEntries(resultColumns.map((column, index) => [column, cells[index]])),
  );
  expect(named[0]).toMatchObject({
    ...{ setpoint: "600", unit: "°F", error: "-2.34", expanded_uncertainty: "1.98" },
    ...{ error_celsius: "\u22121.3", sensor_serial: "S1", conformity: "pass" },
  });
  expect(named[1]).toMatchObject({ setpoint: "1000", unit: "°C", error: "\u22121.3" });
});

it("marks each result outside the scope of accreditation, in the words of the certificate", () => {
  const source = {
    ...{ number: "C-1", issuedOn: "2026-03-05", performedTo: "2026-03-04" },
    order: { number: "O-1", purchaseOrder: "" },
    item: { serial: "S1", tag: "T-1", typeLetter: "K" },
    rows: [{ ...row("600 °C"), scope: "inside" }, { ...row("1000 °C"), scope: "outside" }, row("1200 °C")],
  } as unknown as Parameters<typeof resultRows>[0];
  const column = resultColumns.indexOf("accredited_scope");
  expect(resultRows(source).map((cells) => cells[column])).toEqual([
    "within the scope of accreditation",
    "outside the scope of accreditation",
    "not stated",
  ]);
  const printed = `${english(allInScope)} ${someOutsideScope}`;
  for (const word of ["within", "outside", "scope of accreditation"])
    expect(printed.toLowerCase()).toContain(word);
});

it("has the rows of each sensor and set of a certificate that speaks of several", () => {
  const item = (serial: string) => ({ serial, tag: `T-${serial}`, typeLetter: "K" });
  const part = (serial: string, kind: string) => ({
    ...{ item: item(serial), performedTo: "2026-03-04", kind, rows: [row("600 °C")] },
  });
  const source = {
    ...{ number: "C-1", issuedOn: "2026-03-05", order: { number: "O-1", purchaseOrder: "" } },
    ...part("A", "as-received"),
    sets: [part("A", "as-received"), part("A", "after-anneal"), part("B", "as-received")],
  } as unknown as Parameters<typeof resultRows>[0];
  const at = (name: (typeof resultColumns)[number]) => resultColumns.indexOf(name);
  expect(resultRows(source).map((cells) => `${cells[at("sensor_serial")]} ${cells[at("set")]}`)).toEqual([
    "A as-received",
    "A after-anneal",
    "B as-received",
  ]);
});
