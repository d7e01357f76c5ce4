import type { CertificateFacts } from "@/lib/domain/calibration/certificate-facts";
import type { Findings } from "@/lib/domain/calibration/findings";
import type { Calibration } from "@/lib/domain/calibration/types";
import type { Particulars } from "@/lib/domain/equipment/particulars";

/** An invented certificate of a type S reference that answers every question with yes; each test spoils one thing. */

const reference: Particulars = {
  kind: "reference",
  type: "S",
  protection: "alumina-sheath",
  driftHalfWidthCelsius: 0.3,
  inhomogeneityRelativeHalfWidth: 0.0002,
  basis: "invented",
};

export const found = (deviationAt1000: number): Extract<Findings, { kind: "reference" }> => ({
  kind: "reference",
  points: [
    { celsius: 300, deviationMicrovolt: -3 },
    { celsius: 1000, deviationMicrovolt: deviationAt1000 },
  ],
  expanded: 0.3,
  coverageFactor: 2,
  unit: "celsius",
  note: "",
});

export const calibrationOf = (certificate: string, findings: Findings, performedOn: string) =>
  ({
    id: certificate,
    equipmentId: "x",
    certificate,
    issuer: "Institute",
    accreditation: "INV 1",
    route: "accredited",
    performedOn,
    dueOn: "2027-05-01",
    findings,
  }) as Calibration;

export const facts: CertificateFacts = {
  equipment: { tag: "REF-1", kind: "reference", serial: "AB 12-3", particulars: reference },
  requirement: { fromCelsius: 300, toCelsius: 1000, largestExpanded: 0.5, unit: "celsius" },
  calibration: {
    ...calibrationOf("C-2", found(-9), "2026-05-01"),
    itemSerial: "ab123",
    traceabilityStatement: "Traceable to the SI.",
    justification: "",
    fromCelsius: null,
    toCelsius: null,
  } as CertificateFacts["calibration"],
  parents: 2,
  isIssuerApproved: true,
  // At 1000 °C type S gives 11.5 µV/°C: the two differ by 0.17 °C.
  earlier: calibrationOf("C-1", found(-7), "2025-05-01"),
};

export const changed = (more: Partial<CertificateFacts["calibration"]>): CertificateFacts => ({
  ...facts,
  calibration: { ...facts.calibration, ...more } as CertificateFacts["calibration"],
});
