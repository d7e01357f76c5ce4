import { composeCertificate } from "@/lib/domain/certificate/compose-certificate";
import type { CertificateContent } from "@/lib/domain/certificate/content";
import { evaluateEvidence } from "@/lib/domain/evidence/evaluate";
import type { EvidenceInput } from "@/lib/domain/evidence/schema";
import { demand } from "@/lib/domain/refusal";
import { references } from "@/lib/station/simulation/scenario";
import { withProposedWindows } from "./evaluate";

const rule = { kind: "guarded", guardBandRatio: 1 } as const;

/** The certificate of the simulated run's first sensor. All of it is invented. */
export const benchContent = (evidence: EvidenceInput): CertificateContent => {
  const outcome = evaluateEvidence(withProposedWindows(evidence));
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems));
  const { points, engineVersion } = outcome.evaluation;
  const sensor = evidence.sensors[0];
  if (!sensor) throw new Error("the simulated run has sensors");
  const address = { addressLines: ["1 Bench Street"], contact: "bench@example.org" };
  return demand(
    composeCertificate(
      {
        laboratory: {
          name: "Bench laboratory",
          ...address,
          accreditation: "",
          accreditationNumber: "",
          accreditationMark: null,
          demonstration: true,
        },
        customer: { name: "Bench customer", ...address },
        order: {
          number: "O-2026-0001",
          purchaseOrder: "",
          decisionRule: rule,
          agreedBy: "",
          agreedOn: "",
          uncertaintyDigits: 2,
          toleranceStandard: "IEC 60584-1:2013",
          toleranceClass: "1",
          temperatureUnit: "C",
          setpoints: evidence.setpoints.map(({ nominalCelsius }) => ({
            typed: String(nominalCelsius),
            celsius: nominalCelsius,
          })),
        },
        sensor: {
          tag: "T-000001",
          serial: sensor.serial,
          typeLetter: sensor.type,
          construction: sensor.construction ?? "",
          protection: sensor.protection ?? "other",
        },
        intake: {
          receivedOn: "2026-10-08",
          condition: "as-described",
          conditionNote: "",
          loopResistanceOhm: 11.2,
          insulationMegaohm: 900,
          polarity: "ok",
          typeCheck: "ok",
        },
        run: {
          number: "R-2026-0001",
          furnace: "F1",
          configuration: "Bare tube",
          characterisation: "",
          place: "1",
          immersionMillimetre: 380,
          junctionCelsius: 0,
          performedFrom: "2026-10-14",
          performedTo: "2026-10-14",
          performedBy: "Bench",
          hasTypedReadings: false,
          tipCheckRiseMicrovolt: 260,
          gateDeviations: [],
        },
        evaluation: {
          sequence: 1,
          engineVersion,
          inputsDigest: "0".repeat(64),
          decisionRule: rule,
          uncertaintyDigits: 2,
        },
        points: points.filter((point) => point.sensor === sensor.id),
        deviationFunction: null,
        standards: references.map((reference) => ({
          role: "reference" as const,
          description: "Type S reference thermocouple",
          tag: reference.id,
          serial: reference.serial,
          calibrationCertificate: reference.certificate,
          issuer: "Bench institute",
          accreditation: "",
          route: "nmi",
          performedOn: "2026-02-18",
          dueOn: "2027-02-18",
        })),
      },
      {
        number: "C-2026-0001",
        issuedOn: "2026-10-16",
        signatory: { name: "Bench", role: "Signatory" },
        exception: "",
      },
    ),
  );
};
