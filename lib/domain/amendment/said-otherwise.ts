import { type Draft, sayAll } from "../certificate/catalogue/message";
import type { CertificateContent } from "../certificate/content";
import { type Corrections, correctedFields } from "./amendment";
import { saidNow } from "./said-now";

type Changes = NonNullable<NonNullable<CertificateContent["amends"]>["changes"]>;

const ofTheItem: readonly (keyof Corrections)[] = [
  "serial",
  "construction",
  "protection",
  "material",
  "receivedOn",
  "condition",
];

/**
 * ISO/IEC 17025:2017, 7.8.8.1: any change of information is clearly identified. Each corrected field with what the earlier
 * certificate says there and what this one says; where several items stand, with the label of the one that is meant.
 */
export const saidOtherwise = (
  before: CertificateContent,
  after: CertificateContent,
  corrections: Corrections,
): Draft<Changes> => {
  const was = saidNow(before);
  const now = { ...saidNow(after), remark: corrections.remark ?? "" };
  return correctedFields(corrections)
    .filter((field) => was[field] !== now[field])
    .map((field) => {
      const what = { say: `amendment.what.${field}` } as const;
      const isOneOfMany = before.sets !== undefined && ofTheItem.includes(field);
      return {
        what: isOneOfMany ? sayAll([what, before.item.tag]) : what,
        was: was[field],
        now: now[field],
      };
    });
};
