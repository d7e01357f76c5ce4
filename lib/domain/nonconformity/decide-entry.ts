import { ok, type Result, refuse } from "../refusal";
import type { EntryKind, NonconformityKind, NonconformityState } from "./labels";

/** What decides the next step; entries of before the last reopening count for who took part, not for what is done. */
export type Story = {
  readonly number: string;
  readonly kind: NonconformityKind;
  readonly state: NonconformityState;
  readonly openedById: string | null;
  readonly entries: readonly { readonly kind: EntryKind; readonly saidById: string | null }[];
  readonly openHolds: number;
  /** Who performed or signed the work it is about; of a complaint, they do not close it (7.9.6). */
  readonly involvedIds: readonly string[];
};

const sinceReopened = ({ entries }: Story): readonly EntryKind[] => {
  const kinds = entries.map(({ kind }) => kind);
  return kinds.slice(kinds.lastIndexOf("reopened") + 1);
};

const missing = (story: Story): readonly string[] => {
  const done = sinceReopened(story);
  const needed: readonly (readonly [EntryKind, string])[] = [
    ["correction", "the correction"],
    ["cause", "the cause"],
    ["corrective-action", "the corrective action, or why none is needed"],
    ...(story.kind === "complaint" ? ([["customer-told", "the answer to the customer"]] as const) : []),
  ];
  return needed.flatMap(([kind, words]) => (done.includes(kind) ? [] : [words]));
};

const correcting: ReadonlySet<EntryKind> = new Set(["correction", "cause", "corrective-action"]);

/** Who may not close it: who reported it, who corrected it; of a complaint, also who did the work. */
export const isInvolved = (story: Story, personId: string): boolean =>
  story.openedById === personId ||
  story.entries.some(({ kind, saidById }) => saidById === personId && correcting.has(kind)) ||
  (story.kind === "complaint" && story.involvedIds.includes(personId));

const decideClose = (story: Story, personId: string): Result<NonconformityState> => {
  if (story.state !== "corrected")
    return refuse("wrong-state", `${story.number} is not corrected yet. Nothing was stored.`);
  const gaps = missing(story);
  if (gaps.length > 0)
    return refuse("rule", `Before it is closed, record ${gaps.join("; ")}. Nothing was stored.`);
  if (story.openHolds > 0)
    return refuse(
      "rule",
      "Work is still on hold for it: authorise that it resumes, first. Nothing was stored.",
    );
  if (isInvolved(story, personId))
    return refuse(
      "rule",
      "It is closed by somebody else than who reported it, corrected it or did the work. Nothing was stored.",
    );
  return ok("closed");
};

/** The state after an entry, or why it cannot be made now. */
export const decideEntry = (story: Story, kind: EntryKind, personId: string): Result<NonconformityState> => {
  const { state, number } = story;
  if (kind === "reopened")
    return state === "closed"
      ? ok("open")
      : refuse("wrong-state", `${number} is not closed. Nothing was stored.`);
  if (state === "closed")
    return kind === "note"
      ? ok(state)
      : refuse("wrong-state", `${number} is closed: reopen it with a reason, first. Nothing was stored.`);
  if (kind === "closed") return decideClose(story, personId);
  if (kind === "effect") return ok(state === "open" ? "examined" : state);
  if (kind === "correction")
    return state === "open"
      ? refuse(
          "rule",
          "Before it is corrected, record what it did to results (7.10.1 c). Nothing was stored.",
        )
      : ok("corrected");
  if (kind === "resumed" && state !== "corrected")
    return refuse("rule", "Work resumes once the correction is recorded. Nothing was stored.");
  return ok(state);
};
