import { ok, type Result, refuse } from "../refusal";
import { acceptanceOf } from "./acceptance";
import { type AcceptanceCheck, type CheckKey, mayBeReasoned } from "./acceptance-check";

type Given = {
  readonly personId: string;
  readonly recordedById: string | null;
  readonly decisions: readonly { readonly decision: string }[];
  readonly checks: readonly AcceptanceCheck[];
  readonly decision: "accepted" | "rejected";
  readonly confirmed: readonly CheckKey[];
  readonly reason: string;
};

const kept = "Nothing was decided; what you entered is still here.";

const acceptanceProblems = ({ checks, confirmed, reason }: Given): Record<string, string> => {
  const fields: Record<string, string> = {};
  for (const { key, answer, finding } of checks) {
    if (answer === "no" && !mayBeReasoned(key))
      fields[`confirmed.${key}`] = `It cannot be accepted: ${finding}`;
    else if (!confirmed.includes(key))
      fields[`confirmed.${key}`] = "Look at the certificate, then confirm this, or reject the calibration.";
  }
  if (reason === "" && checks.some(({ key, answer }) => answer === "no" && mayBeReasoned(key)))
    fields.reason = "One answer is no: say why it may be used all the same, and within which limits.";
  return fields;
};

/** Never by who recorded it; once; a rejected one stays rejected, an accepted one can still be rejected. */
export const decideCalibrationUse = (given: Given): Result<null> => {
  const { decision, reason } = given;
  const standing = acceptanceOf(given.decisions);
  if (standing === "rejected" || (standing === "accepted" && decision === "accepted"))
    return refuse(
      "wrong-state",
      `It was ${standing} already. ${standing === "rejected" ? "Record the certificate anew if the record was wrong." : "Nothing was changed."}`,
    );
  if (given.recordedById === given.personId)
    return refuse(
      "rule",
      "You recorded this calibration yourself. Another person has to decide on it; nothing was changed.",
    );
  if (decision === "rejected")
    return reason === ""
      ? refuse("invalid", kept, { reason: "Say why: whoever sent the certificate will ask." })
      : ok(null);
  const fields = acceptanceProblems(given);
  return Object.keys(fields).length === 0 ? ok(null) : refuse("rule", kept, fields);
};
