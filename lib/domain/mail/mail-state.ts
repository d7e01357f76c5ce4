import type { MailOutcome } from "./types";

/** Where a message stands: no attempt yet, one that comes back by itself, given up, or sent. */
export type MailState = "waiting" | "failing" | "given-up" | "sent";

/** By the attempts so far, the first one first. Sent stays sent. */
export const mailState = (outcomes: readonly MailOutcome[]): MailState => {
  if (outcomes.includes("sent")) return "sent";
  const last = outcomes.at(-1);
  if (last === undefined) return "waiting";
  return last === "given-up" ? "given-up" : "failing";
};
