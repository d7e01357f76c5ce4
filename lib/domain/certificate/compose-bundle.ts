import type { MeasuredPoint } from "../evidence/evaluation";
import { ok, type Result, refuse } from "../refusal";
import type { BundleMember, CertificateBundle } from "./bundle";
import { composeBudgets } from "./compose-budgets";
import { composeCertificate } from "./compose-certificate";
import { composeChanges } from "./compose-changes";
import { composeLot } from "./compose-lot";
import type { CertificateContent, CertificateSet, CertificateStandard } from "./content";
import type { CertificateIssue } from "./parts";
import { evidenceOnRequest, setsStatement } from "./texts-of-parts";

const measuredOf = ({ parts }: BundleMember): readonly MeasuredPoint[] =>
  parts.points.flatMap((point) => (point.state === "measured" ? [point] : []));

const setOf = (member: BundleMember, content: CertificateContent): CertificateSet => {
  const { item, receivedOn, performedFrom, performedTo, run, conditions, rows, standards } = content;
  const { evaluation, inputsDigest, engineVersion } = content.evidence;
  return {
    kind: member.kind,
    item,
    receivedOn,
    performedFrom,
    performedTo,
    run,
    conditions,
    rows,
    standards,
    deviations: content.deviations,
    performedBy: content.performedBy,
    evidence: { engineVersion, inputsDigest, evaluation },
    ...(content.function ? { function: content.function } : {}),
  };
};

const eachOnce = (standards: readonly CertificateStandard[]): CertificateStandard[] => [
  ...new Map(standards.map((one) => [`${one.role} ${one.tag} ${one.calibrationCertificate}`, one])).values(),
];

/** What speaks of all members at once: accreditation, scope and U are claimed over every result. */
const overAll = (
  { members, filedUnder }: CertificateBundle,
  contents: readonly CertificateContent[],
  issue: CertificateIssue | null,
): Result<Partial<CertificateContent>> => {
  const whole = composeCertificate(
    { ...filedUnder.parts, points: members.flatMap(({ parts }) => parts.points) },
    issue,
  );
  if (!whole.ok) return whole;
  const { laboratory, scopeStatement, uncertaintyStatement } = whole.value;
  return ok({
    laboratory,
    ...(scopeStatement ? { scopeStatement } : {}),
    uncertaintyStatement,
    performedFrom: contents.map(({ performedFrom }) => performedFrom).toSorted()[0] as string,
    performedTo: contents
      .map(({ performedTo }) => performedTo)
      .toSorted()
      .at(-1) as string,
    standards: eachOnce(contents.flatMap(({ standards }) => standards)),
    deviations: [...new Set(contents.flatMap(({ deviations }) => deviations))],
  });
};

const composeSets = (
  bundle: CertificateBundle,
  own: CertificateContent,
  contents: readonly CertificateContent[],
  issue: CertificateIssue | null,
): Result<CertificateContent> => {
  const { members } = bundle;
  if (members.length === 1) return ok(own);
  const all = overAll(bundle, contents, issue);
  if (!all.ok) return all;
  const changes = composeChanges(members);
  const lot = composeLot(members);
  return ok({
    ...own,
    ...all.value,
    sets: members.map((member, at) => setOf(member, contents[at] as CertificateContent)),
    ...(changes.length > 0 ? { changes } : {}),
    ...(lot ? { lot } : {}),
    statements: [...own.statements, setsStatement],
  });
};

/**
 * What a certificate says that may carry several sensors, sets and runs. Of one measurement of one sensor it says what
 * `composeCertificate` does, to the byte.
 */
export const composeBundle = (
  bundle: CertificateBundle,
  issue: CertificateIssue | null,
): Result<CertificateContent> => {
  const { members, filedUnder, asks } = bundle;
  const contents: CertificateContent[] = [];
  for (const { parts } of members) {
    const content = composeCertificate(parts, issue);
    if (!content.ok) return content;
    contents.push(content.value);
  }
  const own = contents[members.indexOf(filedUnder)];
  if (!own) return refuse("rule", "The certificate is filed under a sensor it does not speak of.");
  const composed = composeSets(bundle, own, contents, issue);
  if (!composed.ok) return composed;
  const budgets = asks.budget ? members.flatMap((one) => composeBudgets(one.parts, measuredOf(one))) : [];
  return ok({
    ...composed.value,
    ...(bundle.repeats.length > 0 ? { repeats: [...bundle.repeats] } : {}),
    ...(budgets.length > 0 ? { budgets } : {}),
    ...(asks.evidence ? { evidenceStatement: evidenceOnRequest } : {}),
  });
};
