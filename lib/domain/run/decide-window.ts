import type { WindowAssessment, WindowProposal } from "@/lib/metrology/stability/stability-types";
import { ok, type Result, refuse } from "../refusal";

export type DecidedWindow = {
  readonly origin: "proposed" | "moved";
  /** Criterion, numbers, and the reason where the criterion is not met. */
  readonly assessment: WindowAssessment & { readonly reason: string };
};

/** A window that misses the criterion may be accepted with a reason, which the signatory sees; never silently. */
export const decideWindow = (
  assessment: WindowAssessment,
  proposal: WindowProposal,
  reason: string,
): Result<DecidedWindow> => {
  const isProposed =
    proposal.kind === "proposed" &&
    proposal.window.fromSeconds === assessment.fromSeconds &&
    proposal.window.toSeconds === assessment.toSeconds;
  if (!assessment.meets && reason.length < 10)
    return refuse("invalid", `This window does not meet the criterion. ${assessment.reasons.join(" ")}`, {
      reason: "Move the window, or say in a sentence why it stands nevertheless; the signatory will see it.",
    });
  return ok({
    origin: isProposed ? "proposed" : "moved",
    assessment: { ...assessment, reason: assessment.meets ? "" : reason },
  });
};
