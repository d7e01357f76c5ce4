import type { MeasuredPoint } from "../evidence/evaluation";
import { ok, type Result, refuse } from "../refusal";
import type { BundleMember, CertificateBundle } from "./bundle";
import { type Draft, givenWhole, type Said } from "./catalogue/message";
import { settle } from "./catalogue/settle";
import { composeBudgets } from "./compose-budgets";
import { composeCertificate } from "./compose-certificate";
import { composeChanges } from "./compose-changes";
import { composeLot } from "./compose-lot";
import { composeRolls } from "./compose-rolls";
import type { CertificateContent, CertificateSet, CertificateStandard } from "./content";
import { type HowWritten, howWritten, inLanguages } from "./how-written";
import type { CertificateIssue } from "./parts";
import { decidePrintable } from "./printable/decide-printable";
import { rollsOf } from "./rolls-of";
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

const eachLineOnce = (contents: readonly CertificateContent[], key: "thermalHistory" | "exclusions") => {
  const lines = [...new Set(contents.flatMap((content) => content[key] ?? []))];
  return lines.length === 0 ? {} : { [key]: lines };
};

const opinionsOf = (contents: readonly CertificateContent[]): Pick<CertificateContent, "opinions"> => {
  const all = contents.flatMap(({ opinions = [] }) => opinions);
  const once = [...new Map(all.map((one) => [JSON.stringify(one), one])).values()];
  return once.length === 0 ? {} : { opinions: once };
};

/** What speaks of all members at once: accreditation, scope and U are claimed over every result. */
const overAll = (
  { members, filedUnder }: CertificateBundle,
  contents: readonly CertificateContent[],
  { issue, how }: Written,
): Result<Partial<CertificateContent>> => {
  const whole = composeCertificate(
    { ...filedUnder.parts, points: members.flatMap(({ parts }) => parts.points) },
    issue,
    how,
  );
  if (!whole.ok) return whole;
  const { laboratory, scopeStatement, uncertaintyStatement, translations } = whole.value;
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
    ...eachLineOnce(contents, "thermalHistory"),
    ...eachLineOnce(contents, "exclusions"),
    ...opinionsOf(contents),
    ...(translations ? { translations } : {}),
  });
};

type Written = { readonly issue: CertificateIssue | null; readonly how: HowWritten };

/** What is said of the whole, beside what each member's content says. */
const furtherDraft = (
  { members, filedUnder, repeats, asks, amends }: CertificateBundle,
  { how }: Written,
  statements: readonly string[],
) => {
  const isFull = how.form.kind === "full";
  const isOne = members.length === 1;
  const changes = isOne ? [] : composeChanges(members);
  const lot = isOne ? null : composeLot(members);
  const rolls = isOne
    ? null
    : composeRolls(members, rollsOf(members), filedUnder.parts.order.temperatureUnit);
  const budgets =
    asks.budget && isFull ? members.flatMap((one) => composeBudgets(one.parts, measuredOf(one))) : [];
  return {
    statements: [...statements, ...(isOne ? [] : [setsStatement])],
    ...(changes.length > 0 ? { changes } : {}),
    ...(lot ? { lot } : {}),
    ...(rolls ? { rolls } : {}),
    ...(repeats.length > 0 ? { repeats: repeats.map(lineOf) } : {}),
    ...(budgets.length > 0 ? { budgets } : {}),
    ...(asks.evidence ? { evidenceStatement: evidenceOnRequest } : {}),
    ...(amends ? { amends: { ...amends, reason: givenWhole(amends.reason) } } : {}),
  } satisfies Draft<Partial<CertificateContent>>;
};

const lineOf = (said: Said): Said => (typeof said === "string" ? givenWhole(said) : said);

/** Each member on its own, in the order of the bundle. */
const composeMembers = (
  members: readonly BundleMember[],
  { issue, how }: Written,
): Result<readonly CertificateContent[]> => {
  const contents: CertificateContent[] = [];
  for (const { parts } of members) {
    const content = composeCertificate(parts, issue, how);
    if (!content.ok) return content;
    contents.push(content.value);
  }
  return ok(contents);
};

/**
 * What a certificate says that may carry several sensors, sets and runs. Of one measurement of one sensor it says what
 * `composeCertificate` does, to the byte. `how`: as the order asks, unless given. What no document could print is refused
 * here, where it is shown, reviewed and signed.
 */
export const composeBundle = (
  bundle: CertificateBundle,
  issue: CertificateIssue | null,
  how: HowWritten = howWritten(bundle.asks),
): Result<CertificateContent> => {
  const { members, filedUnder } = bundle;
  const written = { issue, how };
  const composed = composeMembers(members, written);
  if (!composed.ok) return composed;
  const contents = composed.value;
  const own = contents[members.indexOf(filedUnder)];
  if (!own) return refuse("rule", "The certificate is filed under a sensor it does not speak of.");
  const all: Result<Partial<CertificateContent>> =
    members.length === 1 ? ok({}) : overAll(bundle, contents, written);
  if (!all.ok) return all;
  const further = settle<Partial<CertificateContent>>(
    furtherDraft(bundle, written, own.statements),
    how.wording,
  );
  if (!further.ok) return further;
  const content: CertificateContent = {
    ...own,
    ...all.value,
    ...(members.length === 1
      ? {}
      : { sets: members.map((member, at) => setOf(member, contents[at] as CertificateContent)) }),
    ...further.value.value,
  };
  const translations = [...contents, all.value].flatMap((one) => one.translations ?? []);
  return decidePrintable(inLanguages(content, how, [...translations, ...further.value.translations]));
};
