import { ownLimitName } from "../evidence/tolerance-at";
import type { StoredTolerance } from "./asked-tolerance";

/** The specification of a statement of conformity (ISO/IEC 17025:2017, 7.8.6.2 b) as one phrase; "" where none is asked. */
export const tolerancePhrase = ({ toleranceStandard, toleranceClass }: StoredTolerance): string => {
  if (!toleranceStandard || !toleranceClass) return "";
  if (toleranceStandard === ownLimitName) return `The customer’s own limit, ${toleranceClass}`;
  // E230 calls its two columns standard and special tolerances; IEC numbers its classes.
  return /^\d$/.test(toleranceClass)
    ? `${toleranceStandard}, tolerance class ${toleranceClass}`
    : `${toleranceStandard}, ${toleranceClass} tolerances`;
};
