import type { AcceptanceCheck } from "./acceptance-check";
import type { CertificateFacts } from "./certificate-facts";
import { changeSince } from "./change-since";
import { thermometerCriterion } from "./thermometer-criterion";

type Found = Pick<AcceptanceCheck, "answer" | "finding">;

const within = (size: number, limit: number, what: string, unit: string): Found => ({
  answer: size <= limit ? "yes" : "no",
  finding: `${what} ${Number(size.toPrecision(3))} ${unit}; its record allows ± ${limit} ${unit}${size <= limit ? "" : ". Change its figures first, with what they rest on, or reject this"}.`,
});

const nothingBefore: Found = {
  answer: "not-known",
  finding: "There is no accepted certificate before this one that it could be compared with.",
};

const ofReference = ({ equipment, calibration, earlier }: CertificateFacts): Found => {
  const { particulars } = equipment;
  const { findings } = calibration;
  if (particulars.kind !== "reference" || findings.kind !== "reference") return nothingBefore;
  if (earlier?.findings.kind !== "reference") return nothingBefore;
  const change = changeSince(earlier.findings, findings, particulars.type);
  if (!change)
    return {
      answer: "not-known",
      finding: `It has no temperature in common with certificate ${earlier.certificate}.`,
    };
  return within(
    change.celsius,
    particulars.driftHalfWidthCelsius,
    `Since certificate ${earlier.certificate} its deviation has changed, at ${change.at} °C, by`,
    "°C",
  );
};

const ofVoltmeter = ({ equipment, calibration, earlier }: CertificateFacts): Found => {
  const { particulars } = equipment;
  const { findings } = calibration;
  if (particulars.kind !== "voltmeter" || findings.kind !== "voltmeter") return nothingBefore;
  if (earlier?.findings.kind !== "voltmeter") return nothingBefore;
  const before = new Map(earlier.findings.corrections.map((one) => [one.microvolt, one.correctionMicrovolt]));
  const changes = findings.corrections.flatMap(({ microvolt, correctionMicrovolt }) => {
    const old = before.get(microvolt);
    return old === undefined ? [] : [Math.abs(correctionMicrovolt - old)];
  });
  return changes.length === 0
    ? {
        answer: "not-known",
        finding: `It has no indication in common with certificate ${earlier.certificate}.`,
      }
    : within(
        Math.max(...changes),
        particulars.driftHalfWidthMicrovolt,
        `Since certificate ${earlier.certificate} its corrections have changed by up to`,
        "µV",
      );
};

/**
 * Our criterion for a certificate is the figure our budgets take for granted: drift of a reference or a voltmeter, the
 * parasitic emf of a scanner, the temperature of a junction. A certificate that denies it makes earlier budgets doubtful.
 */
export const conformsToCriterion = (facts: CertificateFacts): Found => {
  const { particulars } = facts.equipment;
  const { findings } = facts.calibration;
  if (particulars.kind === "scanner" && findings.kind === "scanner")
    return within(
      findings.parasiticHalfWidthMicrovolt,
      particulars.parasiticHalfWidthMicrovolt,
      "The largest parasitic emf found is",
      "µV",
    );
  if (particulars.kind === "junction" && findings.kind === "junction")
    return within(
      Math.abs(findings.celsius - particulars.celsius),
      particulars.halfWidthCelsius,
      `It was found away from ${particulars.celsius} °C by`,
      "°C",
    );
  if (particulars.kind === "thermometer" && findings.kind === "thermometer") {
    const { earlier } = facts;
    return thermometerCriterion(
      findings,
      earlier?.findings.kind === "thermometer"
        ? { certificate: earlier.certificate, findings: earlier.findings }
        : null,
      particulars.driftHalfWidthCelsius,
    );
  }
  return particulars.kind === "voltmeter" ? ofVoltmeter(facts) : ofReference(facts);
};
