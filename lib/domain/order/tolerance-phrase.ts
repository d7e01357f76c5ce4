import { type Message, say } from "../certificate/catalogue/message";
import { english } from "../certificate/catalogue/settle";
import { ownLimitName } from "../evidence/tolerance-at";
import type { StoredTolerance } from "./asked-tolerance";

/** The specification of a statement of conformity (ISO/IEC 17025:2017, 7.8.6.2 b) as one phrase. Asked only where there is one. */
export const toleranceMessage = ({ toleranceStandard, toleranceClass }: StoredTolerance): Message => {
  const standard = toleranceStandard ?? "";
  const named = toleranceClass ?? "";
  if (standard === ownLimitName) return say("tolerance.own-limit", { limit: named });
  // E230 calls its two columns standard and special tolerances; IEC numbers its classes.
  return say(/^\d$/.test(named) ? "tolerance.class" : "tolerance.named", { standard, class: named });
};

/** The same in English; "" where none is asked. */
export const tolerancePhrase = (stored: StoredTolerance): string =>
  stored.toleranceStandard && stored.toleranceClass ? english(toleranceMessage(stored)) : "";
