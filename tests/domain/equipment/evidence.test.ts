import { describe, expect, it } from "vitest";
import { readCalibration } from "@/lib/domain/calibration/read-calibration";
import type { Calibration } from "@/lib/domain/calibration/types";
import { junctionEvidenceOf } from "@/lib/domain/equipment/junction-evidence";
import { isEquipmentOf, readEquipment } from "@/lib/domain/equipment/read-equipment";
import { referenceEvidenceOf } from "@/lib/domain/equipment/reference-evidence";
import { scannerEvidenceOf } from "@/lib/domain/equipment/scanner-evidence";
import type { CalibratedKind, Equipment } from "@/lib/domain/equipment/types";
import { voltmeterEvidenceOf } from "@/lib/domain/equipment/voltmeter-evidence";
import {
  ConfigurationEvidence,
  JunctionEvidence,
  ReferenceEvidence,
  ScannerEvidence,
  VoltmeterEvidence,
} from "@/lib/domain/evidence/schema";
import { configurationEvidenceOf } from "@/lib/domain/furnace/configuration-evidence";

// Invented figures.
const record = {
  firmware: "",
  location: "",
  receivedOn: null,
  calibrationIntervalMonths: null,
  checkIntervalDays: null,
  maintenanceIntervalDays: null,
  requirement: "{}",
};
const stored = <K extends CalibratedKind>(kind: K, particulars: object): Equipment<K> => {
  const row = { id: "x", tag: `TAG-${kind}`, kind, maker: "m", model: "", serial: "42", state: "in-service" };
  const equipment = readEquipment({
    ...row,
    ...record,
    particulars: JSON.stringify({ kind, basis: "history", ...particulars }),
    version: 1,
  });
  if (!isEquipmentOf(equipment, kind)) throw new Error("not of its kind");
  return equipment as unknown as Equipment<K>;
};

const calibrated = <K extends CalibratedKind>(
  kind: K,
  findings: object,
  accreditation = "",
): Calibration<K> =>
  readCalibration({
    id: "c",
    equipmentId: "x",
    certificate: "C-9",
    issuer: "Institute",
    accreditation,
    route: "nmi",
    performedOn: new Date("2026-01-10T00:00:00Z"),
    dueOn: new Date("2027-01-10T00:00:00Z"),
    findings: JSON.stringify({ kind, ...findings }),
  }) as unknown as Calibration<K>;

describe("evidence made from equipment", () => {
  it("a reference: deviations, U with its k and unit, drift and inhomogeneity", () => {
    const evidence = referenceEvidenceOf(
      stored("reference", {
        type: "S",
        protection: "alumina-sheath",
        driftHalfWidthCelsius: 0.3,
        inhomogeneityRelativeHalfWidth: 0.0002,
      }),
      calibrated("reference", {
        points: [{ celsius: 1000, deviationMicrovolt: -8.75 }],
        singlePointReachCelsius: 20,
        expanded: 0.3,
        coverageFactor: 2,
        unit: "celsius",
      }),
    );
    expect(ReferenceEvidence.parse(evidence)).toEqual(evidence);
    expect(evidence).toMatchObject({
      id: "TAG-reference",
      correction: {
        kind: "points",
        points: [{ celsius: 1000, deviationMicrovolt: -8.75 }],
        singlePointReachCelsius: 20,
      },
      calibration: { performedOn: "2026-01-10", dueOn: "2027-01-10" },
      calibrationUncertainty: { kind: "expanded", expanded: 0.3, coverageFactor: 2, unit: "celsius" },
      drift: { kind: "rectangular", halfWidth: 0.3, unit: "celsius" },
      inhomogeneity: { kind: "rectangular", halfWidth: 0.0002, unit: "relative" },
    });
    expect(evidence.calibration).not.toHaveProperty("accreditation");
  });

  it("a voltmeter: half a step of its last digit each way; a drift of nought is a line, with its reason", () => {
    const evidence = voltmeterEvidenceOf(
      stored("voltmeter", { driftHalfWidthMicrovolt: 0, resolutionMicrovolt: 0.1 }),
      calibrated("voltmeter", { corrections: [], expandedMicrovolt: 2, coverageFactor: 2 }, "INV 1"),
    );
    expect(VoltmeterEvidence.parse(evidence)).toEqual(evidence);
    expect(evidence.resolution).toMatchObject({ halfWidth: 0.05, unit: "microvolt" });
    expect(evidence.drift).toEqual({ kind: "zero", reason: "history" });
    expect(evidence.calibration.accreditation).toBe("INV 1");
  });

  it("a scanner and a junction: the certificate's value where there is one, else the laboratory's own", () => {
    const scanner = stored("scanner", { parasiticHalfWidthMicrovolt: 2 });
    const junction = stored("junction", { celsius: 0, halfWidthCelsius: 0.1 });
    const found = { kind: "junction", celsius: 0.02, expandedCelsius: 0.05, coverageFactor: 2 };
    const bare = [scannerEvidenceOf(scanner, null), junctionEvidenceOf(junction, null)] as const;
    const sure = [
      scannerEvidenceOf(scanner, calibrated("scanner", { parasiticHalfWidthMicrovolt: 1 })),
      junctionEvidenceOf(junction, calibrated("junction", found)),
    ] as const;
    for (const [first, second] of [bare, sure]) {
      expect(ScannerEvidence.parse(first)).toEqual(first);
      expect(JunctionEvidence.parse(second)).toEqual(second);
    }
    expect(bare[0]).toMatchObject({ calibration: null, parasitic: { halfWidth: 2 } });
    expect(sure[0]).toMatchObject({ parasitic: { halfWidth: 1 } });
    expect(bare[1]).toMatchObject({ celsius: 0, uncertainty: { kind: "rectangular", halfWidth: 0.1 } });
    expect(sure[1]).toMatchObject({ celsius: 0.02, uncertainty: { kind: "expanded", expanded: 0.05 } });
    expect(junctionEvidenceOf(junction, null, 23.5).celsius).toBe(23.5);
  });

  it("a furnace configuration with its characterisation", () => {
    const evidence = configurationEvidenceOf(
      { tag: "FUR-9", name: "Tube" },
      { name: "Block", kind: "equalising-block" },
      {
        id: "h",
        configurationId: "c",
        performedOn: "2026-02-01",
        validUntil: "2027-02-01",
        uniformityHalfWidthCelsius: 0.5,
        statement: "40 mm, half range",
        figures: null,
      },
    );
    expect(ConfigurationEvidence.parse(evidence)).toEqual(evidence);
    expect(evidence.characterisation.uniformity).toMatchObject({ halfWidth: 0.5, unit: "celsius" });
  });
});

describe("readEquipment", () => {
  it("throws where the stored kind and the particulars differ: that is a defect, not input", () => {
    const junction = JSON.stringify({ kind: "junction", celsius: 0, halfWidthCelsius: 0.1, basis: "b" });
    const row = { id: "x", tag: "T", maker: "m", model: "", serial: "1", state: "in-service", version: 1 };
    expect(() => readEquipment({ ...row, ...record, kind: "scanner", particulars: junction })).toThrow(
      /stored as scanner/,
    );
  });
});
