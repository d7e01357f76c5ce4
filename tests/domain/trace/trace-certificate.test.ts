import { expect, it } from "vitest";
import { composeCertificate } from "@/lib/domain/certificate/compose-certificate";
import type { CertificateStandard } from "@/lib/domain/certificate/content";
import { demand } from "@/lib/domain/refusal";
import { traceCertificate } from "@/lib/domain/trace/trace-certificate";
import { inventedParts } from "../../support/certificate-parts";

const content = demand(composeCertificate(inventedParts(), null));
/** Traced with one of its standards changed, as a stored content from elsewhere might stand. */
const traced = (tag: string, change: Partial<CertificateStandard>) =>
  traceCertificate({
    ...content,
    standards: content.standards.map((standard) =>
      standard.tag === tag ? { ...standard, ...change } : standard,
    ),
  });

it("draws references, voltmeter, scanner and junction, each down to the SI by its route", () => {
  const { root, breaks } = traceCertificate(content);
  expect(breaks).toEqual([]);
  expect(root.children.map(({ title }) => title)).toEqual([
    "Reference thermocouple R-S1",
    "Reference thermocouple R-S2",
    "Voltmeter V-1",
    "Scanner X-1",
    "Reference junction J-1",
  ]);
  for (const branch of root.children) {
    const end = branch.children[0]?.children[0];
    expect(end).toMatchObject({ kind: "realisation", standing: "in-date" });
    expect(end?.detail).toMatch(/CIPM MRA|ILAC/);
  }
});

it("counts both the day of calibration and the due day, and no day beyond", () => {
  const standing = (change: Partial<CertificateStandard>) => traced("R-S1", change).lines[0]?.standing;
  expect(standing({ performedOn: "2026-03-02", dueOn: "2026-03-03" })).toBe("in-date");
  expect(standing({ performedOn: "2026-03-03" })).toBe("not-in-date");
  expect(standing({ dueOn: "2026-03-02" })).toBe("not-in-date");
  expect(standing({ dueOn: "" })).toBe("not-dated");
});

it("names a chain that does not reach the SI", () => {
  expect(traced("X-1", { calibrationCertificate: "" })).toMatchObject({
    breaks: [{ tag: "X-1", text: expect.stringContaining("no calibration certificate") }],
  });
  expect(traced("V-1", { dueOn: "2026-03-01" }).breaks).toEqual([
    { tag: "V-1", text: "calibration not in date on the days of the run" },
  ]);
  expect(traced("J-1", { route: "" }).breaks).toEqual([
    { tag: "J-1", text: "the route of traceability is not recorded" },
  ]);
});
