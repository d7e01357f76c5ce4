import { type Draft, givenWhole } from "../certificate/catalogue/message";
import { protectionSaid } from "../certificate/compose-item";
import { type CertificateContent, CertificateContent as Content } from "../certificate/content";
import { issued } from "../certificate/issued";
import type { CertificateIssue } from "../certificate/parts";
import { decidePrintable } from "../certificate/printable/decide-printable";
import { reviewedForm } from "../certificate/reviewed-form";
import { sayFurther } from "../certificate/say-further";
import { type Result, refuse } from "../refusal";
import type { Corrections } from "./amendment";
import { applyCorrections } from "./apply-corrections";
import { correctionWords, remarkSaid } from "./correction-words";
import { saidOtherwise } from "./said-otherwise";

type Amends = NonNullable<CertificateContent["amends"]>;

/** Why, and of an amendment what it says otherwise; a replacement states other results, and its rows say which. */
const amendsSaid = (
  before: CertificateContent,
  after: CertificateContent,
  { changes: _, ...amends }: Amends,
  corrections: Corrections,
): Draft<Amends> => {
  const changes = amends.kind === "amendment" ? saidOtherwise(before, after, corrections) : [];
  return {
    ...amends,
    reason: givenWhole(amends.reason),
    ...(changes.length > 0 ? { changes } : {}),
  };
};

/** What a person wrote now: marked as given in each further language, as on any certificate. */
const asGiven = (
  { item, statements }: CertificateContent,
  corrections: Corrections,
): Draft<Pick<CertificateContent, "item" | "statements">> => {
  const { condition, material, protection, remark } = corrections;
  const remarked = correctionWords(corrections).remark;
  return {
    item: {
      ...item,
      ...(condition === undefined ? {} : { condition: givenWhole(condition) }),
      ...(material === undefined ? {} : { material: givenWhole(material) }),
      ...(protection === undefined ? {} : { protection: protectionSaid(protection) }),
    },
    statements: statements.map((one) =>
      remark !== undefined && one === remarked ? remarkSaid(remark) : one,
    ),
  };
};

/**
 * ISO/IEC 17025:2017, 7.8.8.2, 7.8.8.3: a whole new document that names the earlier one, by number and by hash, and
 * says why. `said` is what the earlier one says, or what a new evaluation says; without `issue` it is the reviewed form.
 */
export const composeAmendment = (
  said: CertificateContent,
  amends: Amends,
  corrections: Corrections,
  issue: CertificateIssue | null,
): Result<CertificateContent> => {
  const { amends: _earlier, ...rest } = reviewedForm(said);
  const corrected = applyCorrections(rest, corrections);
  const whole = sayFurther(corrected, {
    ...asGiven(corrected, corrections),
    amends: amendsSaid(rest, corrected, amends, corrections),
    ...issued(issue),
  });
  if (!whole.ok) return whole;
  const content = Content.safeParse(whole.value);
  if (content.success) return decidePrintable(content.data);
  const first = content.error.issues[0];
  return refuse(
    "rule",
    `The new certificate cannot be composed: ${first?.path.join(".") ?? "content"} does not hold.`,
  );
};
