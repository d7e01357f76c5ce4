import { expect, it } from "vitest";
import { compareRows } from "@/lib/domain/amendment/compare-rows";
import { composeCertificate } from "@/lib/domain/certificate/compose-certificate";
import type { CertificateContent } from "@/lib/domain/certificate/content";
import { demand } from "@/lib/domain/refusal";
import { inventedParts } from "../../support/certificate-parts";

/* What a replacement says otherwise, row by row. Figures are invented. */

const old = demand(composeCertificate(inventedParts(), null));
const withRows = (rows: CertificateContent["rows"]): CertificateContent => ({ ...old, rows });

it("pairs by sensor and setpoint, in the order of the earlier certificate, and tells which differ", () => {
  const [first, ...rest] = old.rows;
  if (first?.state !== "measured") throw new Error("the first row is measured");
  const next = withRows([...rest, { ...first, errorCelsius: "+9.9" }]);
  const compared = compareRows(old, next);
  expect(compared.map(({ label }) => label)).toEqual(
    old.rows.map(({ setpoint }) => `${old.item.tag} at ${setpoint}`),
  );
  expect(compared.filter(({ isChanged }) => isChanged)).toMatchObject([
    { earlier: { errorCelsius: first.errorCelsius }, later: { errorCelsius: "+9.9" } },
  ]);
});

it("takes for changed what is printed otherwise, not what is only drawn so", () => {
  const drawn = old.rows.map((row) => ({
    ...row,
    plot: row.plot && { ...row.plot, errorCelsius: row.plot.errorCelsius + 1e-9 },
  }));
  expect(compareRows(old, withRows(drawn)).some(({ isChanged }) => isChanged)).toBe(false);
});

it("names what only one of them states, and a second measurement at the same setpoint", () => {
  const [first, second] = old.rows;
  if (!first || !second) throw new Error("there are two rows");
  expect(compareRows(withRows([first]), withRows([second]))).toMatchObject([
    { earlier: first, later: null, isChanged: true },
    { earlier: null, later: second, isChanged: true },
  ]);
  expect(compareRows(withRows([first, first]), withRows([first]))).toMatchObject([
    { isChanged: false },
    { later: null, isChanged: true },
  ]);
});

it("keeps the two sets of one sensor apart", () => {
  const set = (kind: "as-received" | "after-anneal") => ({
    ...{ kind, item: old.item, receivedOn: old.receivedOn, performedFrom: old.performedFrom },
    ...{ performedTo: old.performedTo, run: old.run, conditions: old.conditions, rows: old.rows.slice(0, 1) },
    ...{ standards: old.standards, deviations: [], performedBy: old.performedBy, evidence: old.evidence },
  });
  const both = { ...old, sets: [set("as-received"), set("after-anneal")] };
  const [setpoint] = old.rows.map((row) => row.setpoint);
  expect(compareRows(both, both).map(({ label }) => label)).toEqual([
    `${old.item.tag} at ${setpoint}`,
    `${old.item.tag} at ${setpoint}, after annealing`,
  ]);
});
