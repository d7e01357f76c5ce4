import { ok, type Result, refuse } from "../refusal";
import type { HoldKind, HoldOutcome } from "./labels";

export type HoldToEnd = {
  readonly kind: HoldKind;
  readonly isReleased: boolean;
  readonly hasOpenQuestion: boolean;
  /** The customer wants it measured as it is. */
  readonly isInsisted: boolean;
  /** Every sensor it stands on has its certificate already. */
  readonly isIssued: boolean;
  /** The nonconforming work it belongs to, by its number. */
  readonly nonconformity: string | null;
};

/** How a hold may end, ISO/IEC 17025 7.4.3 and 7.10.1 f. */
export const decideRelease = (
  hold: HoldToEnd,
  { outcome, disclaimer }: { readonly outcome: HoldOutcome; readonly disclaimer: string },
): Result<null> => {
  if (hold.isReleased) return refuse("wrong-state", "This hold has ended already. Nothing was stored.");
  if (hold.hasOpenQuestion)
    return refuse(
      "rule",
      "The customer has not answered yet. Wait for the answer, or record here what they told the desk. Nothing was stored.",
    );
  if (hold.nonconformity !== null && outcome !== "return-unmeasured")
    return refuse(
      "rule",
      `This hold belongs to ${hold.nonconformity}: the work resumes on its page, where that is authorised. Nothing was stored.`,
    );
  if (outcome === "go-on" && hold.isInsisted)
    return refuse("rule", "The customer insists, so the certificate has to say so. Nothing was stored.", {
      outcome: "Choose to go on with a disclaimer.",
    });
  if (outcome === "go-on-with-disclaimer" && disclaimer === "")
    return refuse("invalid", "The disclaimer is missing. Nothing was stored.", {
      disclaimer: "Write what the certificate has to say.",
    });
  if (outcome !== "go-on-with-disclaimer" && disclaimer !== "")
    return refuse(
      "invalid",
      "A disclaimer reaches the certificate only where the work goes on with it. Nothing was stored.",
      {
        disclaimer: "Leave it empty, or choose to go on with a disclaimer.",
      },
    );
  if (outcome === "go-on-with-disclaimer" && hold.isIssued)
    return refuse(
      "rule",
      "The certificate is issued, so a disclaimer would not reach it. Nothing was stored.",
      {
        outcome: "Report nonconforming work instead.",
      },
    );
  return ok(null);
};

/** A sentence to begin with; the person at the screen makes it theirs. */
export const proposeDisclaimer = (reason: string, answeredOn: string): string =>
  `The condition of the item was not as described (${reason}). The customer, told of it, asked on ${answeredOn} for the calibration to be carried out all the same; every result on this certificate may be affected.`;
