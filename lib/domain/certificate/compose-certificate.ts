import type { MeasuredPoint } from "../evidence/evaluation";
import type { DecisionRule } from "../evidence/schema";
import { tolerancePhrase } from "../order/tolerance-phrase";
import { ok, type Result, refuse } from "../refusal";
import { composeFunction } from "./compose-function";
import { composeRows, missingSetpoints, setpointText, statesConformity } from "./compose-rows";
import { CertificateContent, type CertificateStandard } from "./content";
import { protectionLabels } from "./labels";
import type { CertificateIssue, CertificateParts } from "./parts";
import { referenceSource } from "./reference-source";
import { unissued } from "./reviewed-form";
import * as texts from "./texts";
import {
  annealed,
  atCustomerSite,
  beforeAndAfter,
  fromProvider,
  onlyAfter,
  relatesAnnealed,
} from "./texts-of-parts";
import { uncertaintyStatement } from "./uncertainty-statement";

const sameRule = (left: DecisionRule, right: DecisionRule): boolean => {
  const [one, other] = [new Map(Object.entries(left)), new Map(Object.entries(right))];
  return [...one.keys(), ...other.keys()].every((key) => one.get(key) === other.get(key));
};

const checks = (intake: CertificateParts["intake"]): string[] => [
  ...(intake.loopResistanceOhm === null ? [] : [`Loop resistance ${intake.loopResistanceOhm} Ω`]),
  ...(intake.insulationMegaohm === null ? [] : [`Insulation resistance ${intake.insulationMegaohm} MΩ`]),
  { ok: "Polarity as marked", reversed: "Polarity reversed against its marking" }[intake.polarity] ??
    "Polarity not checked",
  { ok: "Type agrees with its marking", "other-type": "Behaves as another type than marked" }[
    intake.typeCheck
  ] ?? "Type not checked",
];

const measuredOf = ({ points }: CertificateParts): readonly MeasuredPoint[] =>
  points.flatMap((point) => (point.state === "measured" ? [point] : []));

const sourceOf = (parts: CertificateParts): string =>
  referenceSource(measuredOf(parts), (celsius) => setpointText(parts.order, celsius));

const conditions = (parts: CertificateParts): string[] => {
  const { run } = parts;
  return [
    texts.scale,
    texts.referenceFunction(sourceOf(parts)),
    run.immersionMillimetre === null
      ? "The immersion was not stated."
      : `Immersed ${run.immersionMillimetre} mm in the furnace.`,
    `Reference junction at ${run.junctionCelsius} °C during the measurement.`,
    ...(run.characterisation ? [`Furnace configuration as characterised: ${run.characterisation}`] : []),
    run.tipCheckRiseMicrovolt === null
      ? "The check by warming the tip was not recorded."
      : `Channel confirmed by warming this tip alone before the run (rise ${run.tipCheckRiseMicrovolt} µV).`,
    ...(run.hasTypedReadings ? ["Some readings were typed in by hand, each of them twice."] : []),
  ];
};

/** 7.8.2.1 n: additions to, deviations from and exclusions from the method and the order. */
const deviations = (parts: CertificateParts): string[] => [
  ...(parts.intake.condition === "deviates"
    ? [`Condition on receipt deviated: ${parts.intake.conditionNote || "no details recorded"}.`]
    : []),
  ...(parts.disclaimers ?? []),
  ...parts.run.gateDeviations,
  ...missingSetpoints(parts).map((setpoint) => `Ordered at ${setpoint}: not part of this run.`),
  ...parts.points.flatMap((point) =>
    point.state === "measured"
      ? []
      : [
          `At ${Number(point.nominalCelsius.toFixed(2))} °C no result: ${point.state === "invalid" ? "invalid" : "not reached"}, ${point.reason}`,
        ],
  ),
  ...(parts.deviationFunction && !parts.deviationFunction.ok
    ? [`No deviation function, though one was asked for: ${parts.deviationFunction.problem.message}.`]
    : []),
];

/** 7.8.6.2: which results, which specification, which rule; null where no statement was agreed. */
const conformity = (order: CertificateParts["order"]): CertificateContent["conformity"] => {
  const text = texts.decisionRuleText(order.decisionRule);
  if (!text || !statesConformity(order)) return null;
  return {
    specification: `${tolerancePhrase(order)}; stated for each row of the results that shows a tolerance`,
    rule: text.rule,
    risk: text.risk,
    agreed: order.agreedOn
      ? `Agreed with ${order.agreedBy || "the customer"} on ${order.agreedOn}`
      : "Agreed with the order",
  };
};

const item = ({ sensor, intake }: CertificateParts): CertificateContent["item"] => ({
  tag: sensor.tag,
  serial: sensor.serial,
  typeLetter: sensor.typeLetter,
  construction: sensor.construction || "Not stated",
  protection: protectionLabels[sensor.protection] ?? sensor.protection,
  condition:
    intake.condition === "as-described"
      ? "As described in the order"
      : `Deviates: ${intake.conditionNote || "no details recorded"}`,
  checks: checks(intake),
  ...(sensor.material ? { material: sensor.material } : {}),
});

/**
 * Accreditation is claimed only where at least one result lies within the scope; the results outside are marked one by
 * one, and the statement is not dropped as a whole.
 */
const laboratorySection = (parts: CertificateParts): CertificateContent["laboratory"] => {
  const { accreditation, accreditationNumber, accreditationMark, ...laboratory } = parts.laboratory;
  const isClaimed = measuredOf(parts).some(({ scope }) => scope.state === "inside");
  return {
    ...laboratory,
    addressLines: [...laboratory.addressLines],
    placeOfPerformance: parts.site === undefined ? "At the laboratory's address" : atCustomerSite(parts.site),
    accreditation: isClaimed ? accreditation : "",
    ...(isClaimed && accreditationNumber ? { accreditationNumber } : {}),
    ...(isClaimed && accreditationMark ? { accreditationMark } : {}),
  };
};

/** 7.8.4.1 d: before or after what was done to it; "as received" where nothing was. */
const adjustment = ({ anneals = [], set, hasOtherSet }: CertificateParts): string =>
  anneals.length === 0 || (set !== "after-anneal" && !hasOtherSet)
    ? texts.adjustment
    : [...anneals.map(annealed), hasOtherSet ? beforeAndAfter : onlyAfter].join(" ");

const statementsOf = ({ anneals = [], set, hasOtherSet }: CertificateParts): readonly string[] =>
  anneals.length === 0 || (set !== "after-anneal" && !hasOtherSet)
    ? texts.statements
    : [relatesAnnealed, ...texts.statements.slice(1)];

const scopeStatement = (parts: CertificateParts): Pick<CertificateContent, "scopeStatement"> => {
  const states = measuredOf(parts).map(({ scope }) => scope.state);
  if (states.every((state) => state === "not-stated")) return {};
  if (!states.includes("outside")) return { scopeStatement: texts.allInScope };
  return { scopeStatement: states.includes("inside") ? texts.someOutsideScope : texts.allOutsideScope };
};

const runSection = ({ run }: CertificateParts): CertificateContent["run"] => ({
  number: run.number,
  furnace: run.furnace,
  configuration: run.configuration,
  place: run.place,
  immersion: run.immersionMillimetre === null ? "" : `${run.immersionMillimetre} mm`,
  junctionCelsius: String(run.junctionCelsius),
});

/** ISO/IEC 17025 6.4.6: a calibration counts from its day to its due day, both included. No certificate: nothing to be out of date. */
const isInDate = (standard: CertificateStandard, run: CertificateParts["run"]): boolean =>
  standard.calibrationCertificate === "" ||
  (standard.performedOn <= run.performedFrom && (standard.dueOn === "" || run.performedTo <= standard.dueOn));

/** Reasons why no certificate can be composed, whoever would sign it. */
const obstacle = (parts: CertificateParts): string | null => {
  if (statesConformity(parts.order) && !sameRule(parts.order.decisionRule, parts.evaluation.decisionRule))
    return "The run was evaluated with another decision rule than the one agreed in the order. Return it and evaluate again.";
  if (parts.order.uncertaintyDigits !== parts.evaluation.uncertaintyDigits)
    return "The run was evaluated with another number of digits of U than the order asks for. Return it and evaluate again.";
  if (!parts.points.some((point) => point.state === "measured"))
    return "No setpoint of this sensor was measured; there is nothing to certify.";
  if (!parts.standards.some((standard) => standard.role === "reference"))
    return "No reference is recorded for this run; the results would not be traceable.";
  const outOfDate = parts.standards.find((standard) => !isInDate(standard, parts.run));
  if (outOfDate)
    return `The calibration of ${outOfDate.tag} (${outOfDate.calibrationCertificate}) was not in date on the days of the run, ${parts.run.performedFrom} to ${parts.run.performedTo}.`;
  return null;
};

/**
 * What the certificate of one sensor says. Without `issue` it is the reviewed form: the same content before it has a
 * number, a date and a signatory, which is what the signatory sees and what the submitted hash is over.
 */
export const composeCertificate = (
  parts: CertificateParts,
  issue: CertificateIssue | null,
): Result<CertificateContent> => {
  const why = obstacle(parts);
  if (why) return refuse("rule", why);
  const { laboratory, order, evaluation } = parts;
  const content = CertificateContent.safeParse({
    format: "emfolio-certificate",
    version: 1,
    title: texts.title,
    number: issue?.number ?? unissued.number,
    laboratory: laboratorySection(parts),
    customer: { ...parts.customer, addressLines: [...parts.customer.addressLines] },
    order: { number: order.number, purchaseOrder: order.purchaseOrder },
    method: texts.method(sourceOf(parts)),
    item: item(parts),
    receivedOn: parts.intake.receivedOn,
    performedFrom: parts.run.performedFrom,
    performedTo: parts.run.performedTo,
    issuedOn: issue?.issuedOn ?? unissued.issuedOn,
    run: runSection(parts),
    conditions: conditions(parts),
    rows: composeRows(parts),
    ...scopeStatement(parts),
    ...(parts.deviationFunction?.ok
      ? { function: composeFunction(parts.deviationFunction.value, sourceOf(parts)) }
      : {}),
    uncertaintyStatement: uncertaintyStatement(measuredOf(parts), (celsius) => setpointText(order, celsius)),
    conformity: conformity(order),
    traceabilityStatement: texts.traceabilityStatement(
      parts.standards.filter((standard) => standard.calibrationCertificate === "").map(({ tag }) => tag),
    ),
    standards: [...parts.standards],
    adjustment: adjustment(parts),
    deviations: deviations(parts),
    sampling: texts.sampling,
    externalResults: parts.provider ? fromProvider(parts.provider) : texts.externalResults,
    statements: [...statementsOf(parts), ...(laboratory.demonstration ? [texts.demonstration] : [])],
    authorisedBy: issue
      ? { ...issue.signatory, on: issue.issuedOn }
      : unissued.authorisedBy,
    performedBy: parts.run.performedBy,
    evidence: {
      engineVersion: evaluation.engineVersion,
      inputsDigest: evaluation.inputsDigest,
      evaluation: evaluation.sequence,
      exception: issue?.exception ?? "",
    },
  } satisfies CertificateContent);
  if (content.success) return ok(content.data);
  const first = content.error.issues[0];
  return refuse(
    "rule",
    `The certificate cannot be composed: ${first?.path.join(".") ?? "content"} is missing or does not hold.`,
  );
};
