import type { AcceptanceCheck } from "./acceptance-check";
import { calibratedRange } from "./calibrated-range";
import type { CertificateFacts } from "./certificate-facts";
import { conformsToCriterion } from "./conforms-to-criterion";
import { expandedOf } from "./expanded-of";
import { routeLabels } from "./labels";
import { isSameSerial } from "./same-serial";

type Found = Pick<AcceptanceCheck, "answer" | "finding">;

const identity = ({ equipment, calibration }: CertificateFacts): Found => {
  const { itemSerial } = calibration;
  if (itemSerial === "")
    return {
      answer: "not-known",
      finding: `It was recorded without the serial number of the certificate; ours is ${equipment.serial}.`,
    };
  if (calibration.findings.kind !== equipment.kind)
    return { answer: "no", finding: "The certificate is of another kind of equipment." };
  return isSameSerial(itemSerial, equipment.serial)
    ? { answer: "yes", finding: `Serial number ${itemSerial} on both.` }
    : {
        answer: "no",
        finding: `The certificate is for serial number ${itemSerial}; ${equipment.tag} is ${equipment.serial}.`,
      };
};

const issuer = ({ calibration, isIssuerApproved }: CertificateFacts): Found => {
  if (calibration.route === "in-house")
    return { answer: "yes", finding: "Calibrated in this laboratory; no provider is asked for." };
  return isIssuerApproved
    ? {
        answer: "yes",
        finding: `${calibration.issuer} was approved for it on ${calibration.performedOn}.`,
      }
    : {
        answer: "no",
        finding: `${calibration.issuer} is not approved for this kind of equipment on ${calibration.performedOn}. Approve it under Providers, or reject this.`,
      };
};

const range = ({ calibration, requirement }: CertificateFacts): Found => {
  const certified = calibratedRange(calibration.findings, calibration);
  if (!certified) return { answer: "yes", finding: "No range of temperature is asked of it." };
  const { fromCelsius: lowest, toCelsius: highest } = requirement;
  const says = `The certificate holds from ${certified.fromCelsius} to ${certified.toCelsius} °C`;
  if (lowest === undefined && highest === undefined)
    return { answer: "not-known", finding: `${says}; its record does not say what it is used for.` };
  const from = lowest ?? certified.fromCelsius;
  const to = highest ?? certified.toCelsius;
  return {
    answer: certified.fromCelsius <= from && certified.toCelsius >= to ? "yes" : "no",
    finding: `${says}; it is used from ${from} to ${to} °C.`,
  };
};

const unitSigns = { celsius: "°C", microvolt: "µV" } as const;

const uncertainty = ({ equipment, calibration, requirement }: CertificateFacts): Found => {
  const { largestExpanded, unit } = requirement;
  if (largestExpanded === undefined || unit === undefined)
    return { answer: "not-known", finding: "Its record does not say how large U may be." };
  const found = expandedOf(calibration.findings, equipment, unit);
  if (found === null)
    return {
      answer: "not-known",
      finding: `The certificate gives no U that can be compared with ${largestExpanded} ${unitSigns[unit]}.`,
    };
  return {
    answer: found <= largestExpanded ? "yes" : "no",
    finding: `U is ${Number(found.toPrecision(3))} ${unitSigns[unit]}; at most ${largestExpanded} ${unitSigns[unit]} is fit for its use.`,
  };
};

const traceability = ({ calibration, parents }: CertificateFacts): Found => {
  const { route, accreditation, justification, traceabilityStatement } = calibration;
  if (traceabilityStatement === "")
    return {
      answer: "no",
      finding: "No statement of metrological traceability was taken from the certificate.",
    };
  if (route === "accredited" && accreditation === "")
    return { answer: "no", finding: "An accredited laboratory was named without its accreditation." };
  if (route === "other" && justification === "")
    return { answer: "no", finding: "Another route was taken, and nobody said why it is traceable." };
  return {
    answer: "yes",
    finding: `${routeLabels[route]}${accreditation ? `, ${accreditation}` : ""}; ${parents === 0 ? "the certificate names nothing behind it" : `${parents} ${parents === 1 ? "step" : "steps"} behind it named`}.`,
  };
};

/** The questions a second person answers before a calibration is used, ISO/IEC 17025 6.4.4, 6.4.5, 6.5 and 6.6.2. */
export const assessCalibration = (facts: CertificateFacts): readonly AcceptanceCheck[] => [
  { key: "identity", question: "Is it the certificate of this very thing?", ...identity(facts) },
  { key: "issuer", question: "Was its issuer approved?", ...issuer(facts) },
  { key: "range", question: "Does it cover what we use it for?", ...range(facts) },
  { key: "uncertainty", question: "Is its U fit for our purpose?", ...uncertainty(facts) },
  { key: "traceability", question: "Does it say how it reaches the SI?", ...traceability(facts) },
  {
    key: "criterion",
    question: "Does it agree with the figures of our budgets?",
    ...conformsToCriterion(facts),
  },
];
