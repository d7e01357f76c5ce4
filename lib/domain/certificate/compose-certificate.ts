import type { MeasuredPoint } from "../evidence/evaluation";
import type { DecisionRule } from "../evidence/schema";
import { toleranceMessage } from "../order/tolerance-phrase";
import { ok, type Result, refuse } from "../refusal";
import { type Draft, givenWhole, type Message, type Said, say, sayAll } from "./catalogue/message";
import { settle } from "./catalogue/settle";
import { composeConditions, composeDeviations, composeExclusions } from "./compose-circumstances";
import { composeFunction } from "./compose-function";
import { composeItem, composeThermalHistory } from "./compose-item";
import { roomFiguresOf } from "./compose-room";
import { composeRows, setpointText, statesConformity } from "./compose-rows";
import { CertificateContent, type CertificateStandard } from "./content";
import { decisionRuleMessages } from "./decision-rule-text";
import { type HowWritten, inEnglish, inLanguages } from "./how-written";
import { issued, known } from "./issued";
import type { CertificateIssue, CertificateParts } from "./parts";
import { referenceSource } from "./reference-source";
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

const measuredOf = ({ points }: CertificateParts): readonly MeasuredPoint[] =>
  points.flatMap((point) => (point.state === "measured" ? [point] : []));

const sourceOf = (parts: CertificateParts): Said =>
  referenceSource(measuredOf(parts), (celsius) => setpointText(parts.order, celsius));

/** 7.8.6.2: which results, which specification, which rule; null where no statement was agreed. */
const conformity = (order: CertificateParts["order"]): Draft<CertificateContent["conformity"]> => {
  const text = decisionRuleMessages(order.decisionRule);
  if (!text || !statesConformity(order)) return null;
  return {
    specification: say("conformity.specification", { tolerance: toleranceMessage(order) }),
    rule: text.rule,
    risk: text.risk,
    agreed: order.agreedOn
      ? say("conformity.agreed-with", {
          who: order.agreedBy || say("conformity.the-customer"),
          day: order.agreedOn,
        })
      : say("conformity.agreed-with-order"),
  };
};

/**
 * Accreditation is claimed only where at least one result lies within the scope; the results outside are marked one by
 * one, and the statement is not dropped as a whole. Of an external provider's results our own accreditation says nothing.
 */
const laboratorySection = (parts: CertificateParts): Draft<CertificateContent["laboratory"]> => {
  const { accreditation, accreditationNumber, accreditationMark, ...laboratory } = parts.laboratory;
  const isClaimed =
    parts.provider === undefined && measuredOf(parts).some(({ scope }) => scope.state === "inside");
  return {
    ...laboratory,
    addressLines: [...laboratory.addressLines],
    placeOfPerformance: parts.site === undefined ? say("place.laboratory") : atCustomerSite(parts.site),
    accreditation: isClaimed ? accreditation : "",
    ...(isClaimed && accreditationNumber ? { accreditationNumber } : {}),
    ...(isClaimed && accreditationMark ? { accreditationMark } : {}),
  };
};

/** 7.8.4.1 d: before or after what was done to it; "as received" where nothing was. */
const adjustment = ({ anneals = [], set, hasOtherSet }: CertificateParts): Message =>
  anneals.length === 0 || (set !== "after-anneal" && !hasOtherSet)
    ? texts.adjustment
    : sayAll([...anneals.map(annealed), hasOtherSet ? beforeAndAfter : onlyAfter]);

const statementsOf = ({ anneals = [], set, hasOtherSet }: CertificateParts): readonly Message[] =>
  anneals.length === 0 || (set !== "after-anneal" && !hasOtherSet)
    ? texts.statements
    : [relatesAnnealed, ...texts.statements.slice(1)];

const scopeStatement = (parts: CertificateParts): { readonly scopeStatement?: Message } => {
  if (parts.provider !== undefined) return {};
  const states = measuredOf(parts).map(({ scope }) => scope.state);
  if (states.every((state) => state === "not-stated")) return {};
  if (!states.includes("outside")) return { scopeStatement: texts.allInScope };
  return { scopeStatement: states.includes("inside") ? say("scope.some-outside") : texts.allOutsideScope };
};

const runSection = ({ run }: CertificateParts): CertificateContent["run"] => ({
  number: run.number,
  furnace: run.furnace,
  configuration: run.configuration,
  place: run.place,
  immersion: run.immersionMillimetre === null ? "" : `${run.immersionMillimetre} mm`,
  junctionCelsius: String(run.junctionCelsius),
  ...roomFiguresOf(run.room ?? []),
});

/** ISO/IEC 17025 6.4.6: a calibration counts from its day to its due day, both included. No certificate: nothing to be out of date. */
const isInDate = (
  standard: Pick<CertificateStandard, "calibrationCertificate" | "performedOn" | "dueOn">,
  run: CertificateParts["run"],
): boolean =>
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

/** Where the results come from, what they rest on, and what was left out. */
const grounds = (parts: CertificateParts, isSimplified: boolean) => {
  const history = isSimplified ? null : composeThermalHistory(parts);
  const exclusions = composeExclusions(parts);
  return {
    traceabilityStatement: texts.traceabilityStatement(
      parts.standards.filter((standard) => standard.calibrationCertificate === "").map(({ tag }) => tag),
    ),
    standards: parts.standards.map((one) =>
      parts.provider === undefined ? one : { ...one, isExternal: true as const },
    ),
    adjustment: adjustment(parts),
    deviations: composeDeviations(parts),
    ...(history ? { thermalHistory: history } : {}),
    ...(exclusions.length > 0 ? { exclusions } : {}),
  };
};

/** 7.8.1.3: that it is simplified, and by what agreement. */
const formOf = ({ form }: HowWritten) =>
  form.kind === "full"
    ? {}
    : {
        form: form.kind,
        formStatement: say("form.simplified", {
          agreement: form.agreement === "" ? "" : say("form.agreement", { reference: form.agreement }),
        }),
      };

const draftOf = (parts: CertificateParts, issue: CertificateIssue | null, how: HowWritten) => {
  const isSimplified = how.form.kind === "simplified";
  const { laboratory, order, evaluation, opinions = [] } = parts;
  const source = sourceOf(parts);
  return {
    format: "emfolio-certificate",
    version: 1,
    title: texts.title,
    ...issued(issue),
    laboratory: laboratorySection(parts),
    customer: { ...parts.customer, addressLines: [...parts.customer.addressLines] },
    order: { number: order.number, purchaseOrder: order.purchaseOrder },
    method: texts.method(source),
    item: composeItem(parts, isSimplified),
    receivedOn: parts.intake.receivedOn,
    performedFrom: parts.run.performedFrom,
    performedTo: parts.run.performedTo,
    run: runSection(parts),
    conditions: composeConditions(parts, source, isSimplified),
    rows: composeRows(parts),
    ...scopeStatement(parts),
    ...(parts.deviationFunction?.ok && !isSimplified
      ? { function: composeFunction(parts.deviationFunction.value, source) }
      : {}),
    uncertaintyStatement: uncertaintyStatement(measuredOf(parts), (celsius) => setpointText(order, celsius)),
    conformity: conformity(order),
    ...grounds(parts, isSimplified),
    sampling: texts.sampling,
    externalResults: parts.provider === undefined ? texts.externalResults : fromProvider(parts.provider),
    statements: [...statementsOf(parts), ...(laboratory.demonstration ? [texts.demonstration] : [])],
    ...formOf(how),
    ...(opinions.length > 0
      ? {
          opinions: opinions.map((one) => ({
            ...one,
            text: givenWhole(one.text),
            basis: givenWhole(one.basis),
          })),
        }
      : {}),
    performedBy: parts.run.performedBy,
    evidence: {
      engineVersion: evaluation.engineVersion,
      inputsDigest: evaluation.inputsDigest,
      evaluation: evaluation.sequence,
      exception: known(issue?.exception ?? "", "performer-signed-off"),
    },
  } satisfies Draft<CertificateContent>;
};

/**
 * What the certificate of one sensor says. Without `issue` it is the reviewed form: the same content before it has a
 * number, a date and a signatory, which is what the signatory sees and what the submitted hash is over.
 */
export const composeCertificate = (
  parts: CertificateParts,
  issue: CertificateIssue | null,
  how: HowWritten = inEnglish,
): Result<CertificateContent> => {
  const why = obstacle(parts);
  if (why) return refuse("rule", why);
  const settled = settle<CertificateContent>(draftOf(parts, issue, how), how.wording);
  if (!settled.ok) return settled;
  const content = CertificateContent.safeParse(
    inLanguages(settled.value.value, how, settled.value.translations),
  );
  if (content.success) return ok(content.data);
  const first = content.error.issues[0];
  return refuse(
    "rule",
    `The certificate cannot be composed: ${first?.path.join(".") ?? "content"} is missing or does not hold.`,
  );
};
