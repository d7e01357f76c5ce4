import { expect, it } from "vitest";
import type { CertificateRow } from "@/lib/domain/certificate/content";
import { scopeWords } from "@/lib/domain/history/scope-words";
import { sensorHistory } from "@/lib/domain/history/sensor-history";

const row = (nominalCelsius: string, errorCelsius: string, expandedCelsius: string, more = {}) =>
  ({
    ...{ state: "measured", setpoint: `${nominalCelsius} °C`, nominalCelsius, errorCelsius, expandedCelsius },
    ...more,
  }) as CertificateRow;
const past = (
  certificate: string,
  performedTo: string,
  rows: readonly CertificateRow[],
  set: "" | "as-received" | "after-anneal" = "",
) => ({ certificate, performedTo, rows, set });

it("follows each setpoint through the certificates, the oldest first", () => {
  const series = sensorHistory([
    past("C-2", "2027-03-01", [row("1000", "\u22121.5", "1.2"), row("600", "0.4", "0.9")]),
    past("C-1", "2026-03-01", [row("600", "0.1", "0.9"), row("1000", "1.0", "0.9")]),
  ]);
  expect(series.map(({ nominalCelsius }) => nominalCelsius)).toEqual([600, 1000]);
  const [first, second] = series[1]!.points;
  expect(first).toMatchObject({ certificate: "C-1", error: "1.0", change: null });
  expect(second).toMatchObject({ certificate: "C-2", error: "\u22121.5", errorCelsius: -1.5 });
  // −1.5 − 1.0 = −2.5 against √(0.9² + 1.2²) = 1.5
  expect(second!.change!.celsius).toBeCloseTo(-2.5, 12);
  expect(second!.change!.expandedCelsius).toBeCloseTo(1.5, 12);
  expect(second!.change!.isMore).toBe(true);
  expect(series[0]!.points[1]!.change!.isMore).toBe(false);
});

it("keeps how the certificate marks each against the scope, in its words", () => {
  const rows = [
    row("600", "0.1", "0.9", { scope: "inside" }),
    row("1300", "0.4", "3", { scope: "outside" }),
    row("1350", "0.4", "3"),
  ];
  expect(
    sensorHistory([past("C-1", "2026-03-01", rows)]).map(({ points }) => scopeWords(points[0]!.scope)),
  ).toEqual(["within the scope of accreditation", "outside the scope of accreditation", "not stated"]);
});

it("leaves out what was not measured, and what carries no figure", () => {
  const rows = [
    row("600", "", "", { state: "not-reached" }),
    row("800", "", "0.9"),
    row("900", "0.1", "0.5"),
  ];
  expect(
    sensorHistory([past("C-1", "2026-03-01", rows)]).map(({ nominalCelsius }) => nominalCelsius),
  ).toEqual([900]);
  expect(sensorHistory([])).toEqual([]);
});

it("holds a change that equals its uncertainty for no more than it", () => {
  const series = sensorHistory([
    past("C-1", "2026-03-01", [row("600", "0.0", "3.0")]),
    past("C-2", "2027-03-01", [row("600", "5.0", "4.0")]),
  ]);
  expect(series[0]!.points[1]!.change).toMatchObject({ expandedCelsius: 5, isMore: false });
});

it("puts what came before an anneal before what came after it, on one certificate", () => {
  const series = sensorHistory([
    past("C-1", "2026-03-01", [row("600", "2.0", "0.5")], "as-received"),
    past("C-1", "2026-03-01", [row("600", "0.2", "0.5")], "after-anneal"),
  ]);
  expect(series[0]!.points.map(({ set, change }) => `${set} ${change?.isMore ?? "first"}`)).toEqual([
    "as-received first",
    "after-anneal true",
  ]);
});
