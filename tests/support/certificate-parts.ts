import type { CertificateParts } from "@/lib/domain/certificate/parts";
import { measuredPoint } from "./evaluated-point";

const standard = (role: "reference" | "voltmeter" | "scanner" | "junction", tag: string) => ({
  role,
  description: `Invented ${role}`,
  tag,
  serial: `SN-${tag}`,
  calibrationCertificate: `CAL-${tag}`,
  issuer: "Invented National Institute",
  accreditation: "INV 0001",
  route: role === "reference" ? "nmi" : "accredited",
  performedOn: "2026-01-10",
  dueOn: "2027-01-10",
});

/** Invented parts of one certificate: type K, two setpoints measured, one typed in °F, one invalid. */
export const inventedParts = (change: Partial<CertificateParts> = {}): CertificateParts => {
  const point = (celsius: number) =>
    measuredPoint({
      sensor: "T-000123",
      setpoint: String(celsius),
      type: "K",
      celsius,
      error: 0.7,
      rule: "guarded",
    });
  return {
    laboratory: {
      name: "Invented Calibration Laboratory",
      addressLines: ["2 Invented Lane", "Nowhere"],
      contact: "lab@example.test",
      accreditation: "",
      accreditationNumber: "",
      accreditationMark: null,
      demonstration: true,
    },
    customer: { name: "North Furnaces", addressLines: ["1 Invented Lane"], contact: "Lee Buyer" },
    order: {
      number: "O-2026-0007",
      purchaseOrder: "PO-77",
      decisionRule: { kind: "guarded", guardBandRatio: 1 },
      agreedBy: "Lee Buyer",
      agreedOn: "2026-02-20",
      uncertaintyDigits: 2,
      toleranceStandard: "IEC 60584-1:2013",
      toleranceClass: "1",
      temperatureUnit: "F",
      setpoints: [
        { typed: "600", celsius: 315.5555555555556 },
        { typed: "1200", celsius: 648.8888888888889 },
      ],
    },
    sensor: {
      tag: "T-000123",
      serial: "4711",
      typeLetter: "K",
      construction: "mineral insulated, 3 mm",
      protection: "metal-sheath",
    },
    intake: {
      receivedOn: "2026-02-25",
      condition: "as-described",
      conditionNote: "",
      loopResistanceOhm: 3.2,
      insulationMegaohm: 250,
      polarity: "ok",
      typeCheck: "ok",
    },
    run: {
      number: "R-2026-0003",
      furnace: "F-1 Tube furnace",
      configuration: "Block of six",
      characterisation: "± 1.0 °C over 50 mm, invented",
      place: "2",
      immersionMillimetre: 300,
      junctionCelsius: 0,
      performedFrom: "2026-03-02",
      performedTo: "2026-03-03",
      performedBy: "Toni Bench",
      hasTypedReadings: false,
      tipCheckRiseMicrovolt: 210,
      gateDeviations: [],
    },
    evaluation: {
      sequence: 1,
      engineVersion: "1",
      inputsDigest: "ab".repeat(32),
      decisionRule: { kind: "guarded", guardBandRatio: 1 },
      uncertaintyDigits: 2,
    },
    points: [
      point(315.5555555555556),
      {
        state: "invalid",
        sensor: "T-000123",
        setpoint: "b",
        type: "K",
        nominalCelsius: 648.8888888888889,
        reason: "open circuit",
      },
      point(900),
    ],
    deviationFunction: null,
    standards: [
      standard("reference", "R-S1"),
      standard("reference", "R-S2"),
      standard("voltmeter", "V-1"),
      standard("scanner", "X-1"),
      standard("junction", "J-1"),
    ],
    ...change,
  };
};
