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

it("names references, voltmeter, scanner and junction, each with its standing", () => {
  expect(
    traceCertificate(content).map(({ role, standard, standing }) => [role, standard.tag, standing]),
  ).toEqual([
    ["Reference thermocouple", "R-S1", "in-date"],
    ["Reference thermocouple", "R-S2", "in-date"],
    ["Voltmeter", "V-1", "in-date"],
    ["Scanner", "X-1", "in-date"],
    ["Reference junction", "J-1", "in-date"],
  ]);
});

it("counts both the day of calibration and the due day, and no day beyond", () => {
  const standing = (change: Partial<CertificateStandard>) => traced("R-S1", change)[0]?.standing;
  expect(standing({ performedOn: "2026-03-02", dueOn: "2026-03-03" })).toBe("in-date");
  expect(standing({ performedOn: "2026-03-03" })).toBe("not-in-date");
  expect(standing({ dueOn: "2026-03-02" })).toBe("not-in-date");
  expect(standing({ dueOn: "" })).toBe("not-dated");
  expect(standing({ calibrationCertificate: "" })).toBe("no-certificate");
});
