import { holdCheckpoint } from "@/lib/domain/audit/checkpoint";
import type { PublicStatus } from "@/lib/domain/authenticity/public-status";
import { type Rule, type Ruled, ruled } from "./ruling";

const key = "log";
const label = "The laboratory’s log";
const asked = "what it held when this was signed";

/** The file took with it where the log stood; the laboratory says what stands there today. */
export const sameLog: Rule = (file, { status, host }) => {
  if (!file.content) return null;
  const { log } = file.content;
  if (log === undefined)
    return ruled(key, label, "skipped", "This certificate carries no checkpoint of the laboratory’s log.");
  // Anybody can seal a file with a key of their own and any checkpoint in it: that says nothing of the laboratory.
  if (file.verdict !== "total-passed")
    return ruled(key, label, "skipped", "Not looked at: the laboratory does not stand for this file.");
  if (status === null) {
    const text =
      host === null
        ? `Whether the log still holds ${asked} can only be asked online, at the address in the document.`
        : `The laboratory was not asked whether its log still holds ${asked}.`;
    return ruled(key, label, "unknown", text);
  }
  if (status.standing === "unknown")
    return ruled(
      key,
      label,
      "unknown",
      "The laboratory does not know this document, nor then its place in the log.",
    );
  return held(log, status);
};

function held(log: Parameters<typeof holdCheckpoint>[0], { laboratory, logHash }: PublicStatus): Ruled {
  const whose = laboratory === "" ? "the laboratory" : laboratory;
  const remedy = `Keep this file as it is, and ask ${whose} what happened to its log; with this file it can find out.`;
  switch (holdCheckpoint(log, logHash === "" ? null : logHash)) {
    case "same":
      return ruled(
        key,
        label,
        "passed",
        `The log still holds ${asked}: its event ${log.sequence} is the same.`,
      );
    case "different": {
      const text = `The log was changed since this was signed: its event ${log.sequence} is another one now.`;
      const title = "The laboratory’s log was changed since";
      return ruled(key, label, "failed", text, { kind: "look", title, reason: `${text} ${remedy}` });
    }
    case "missing": {
      const text = `The log is shorter than it was when this was signed: it ends before event ${log.sequence}.`;
      const title = "The laboratory’s log was set back";
      return ruled(key, label, "failed", text, { kind: "look", title, reason: `${text} ${remedy}` });
    }
  }
}
