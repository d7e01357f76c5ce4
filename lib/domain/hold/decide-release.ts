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
  /** Of one sensor, and not of the whole order. */
  readonly isOfSensor: boolean;
  /** The order is accepted: sensors can still come for it. */
  readonly isOrderInWork: boolean;
  /** Sensors it stands on that were measured and wait in review, by tag. */
  readonly inReview: readonly string[];
  /** The nonconforming work it belongs to, by its number. */
  readonly nonconformity: string | null;
};

type End = {
  readonly outcome: HoldOutcome;
  readonly disclaimer: string;
  readonly awaitsAnother: boolean;
};

/** Another is awaited for one sensor that goes back unmeasured, while others can come. */
const decideAwaited = (hold: HoldToEnd, outcome: HoldOutcome): Result<null> => {
  const no = (words: string): Result<null> =>
    refuse("rule", "No other sensor can be awaited here. Nothing was stored.", { awaitsAnother: words });
  if (outcome !== "return-unmeasured") return no("Only where this one goes back unmeasured: choose that.");
  if (!hold.isOfSensor)
    return no("This hold stands on the whole order. End it, and put the sensors on hold that go back.");
  if (hold.isIssued) return no("This sensor has its certificate or left already, and keeps its place.");
  if (!hold.isOrderInWork)
    return no("Nothing more is taken in for this order. Record another order for the other sensor.");
  return ok(null);
};

/** How a hold may end, ISO/IEC 17025 7.4.3 and 7.10.1 f. */
export const decideRelease = (hold: HoldToEnd, end: End): Result<null> => {
  const { outcome, disclaimer } = end;
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
  if (outcome === "return-unmeasured" && hold.inReview.length > 0)
    return refuse(
      "rule",
      `${hold.inReview.join(", ")} was measured and waits in review: nothing measured goes back as unmeasured. Nothing was stored.`,
      {
        outcome: `Choose how it goes on${hold.nonconformity ? ` on the page of ${hold.nonconformity}` : ""}, or let it go in the review of its run first.`,
      },
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
  return end.awaitsAnother ? decideAwaited(hold, outcome) : ok(null);
};

/** A sentence to begin with; the person at the screen makes it theirs. */
export const proposeDisclaimer = (reason: string, answeredOn: string): string =>
  `The condition of the item was not as described (${reason}). The customer, told of it, asked on ${answeredOn} for the calibration to be carried out all the same; every result on this certificate may be affected.`;
