import { openedState } from "@/lib/domain/review/decide-opened";
import type { EarlierResult } from "@/lib/domain/review/earlier-result";
import { maySettle } from "@/lib/domain/review/may-settle";
import { type ResultName, resultKey } from "@/lib/domain/review/result-name";
import { withoutNotes } from "@/lib/domain/review/without-notes";
import { type Actor, actorIdOf } from "@/lib/domain/staff/actor";
import type { Tx } from "../in-scope";
import { sha256 } from "../sha256";
import { loadEarlier } from "./load-earlier";
import { loadExceptions } from "./load-exceptions";
import { loadOpened } from "./load-opened";
import { loadRemarks } from "./load-remarks";
import type { ReviewRun } from "./load-review-run";
import { signedTags, stillOpen } from "./review-summary";

/** What a person who reviews this run has before them: what stands out, what must be opened, what was remarked. */
export const loadDuty = async (tx: Tx, review: ReviewRun, actor: Actor) => {
  const earlier = await loadEarlier(tx, review);
  const all = await loadExceptions(tx, review, earlier);
  const exceptions = stillOpen(review, all);
  const opened = await loadOpened(tx, review, actorIdOf(actor), all);
  const state = openedState({ ...opened, sha256 });
  const signed = signedTags(review);
  const waits = ({ sensor }: ResultName): boolean => !signed.has(sensor);
  const mustOpen = state.mustOpen.filter(waits);
  const remarks = (await loadRemarks(tx, review)).map((remark) => ({
    ...remark,
    maySettle: maySettle(actor, remark.byId),
  }));
  return {
    earlier: new Map<string, EarlierResult>(earlier.map((one) => [resultKey(one), one])),
    /** Of what is still to be signed. */
    exceptions,
    /** How many stood out of what is signed for, and so had to be opened. */
    settledExceptions: withoutNotes(all).length - withoutNotes(exceptions).length,
    /** Of the sensors that nobody has signed for. */
    mustOpen,
    unopened: state.unopened.filter(waits),
    /** Keys: by lot, and opened by this person. */
    drawn: state.drawn,
    must: new Set(mustOpen.map(resultKey)),
    opened: new Set(opened.opened.map(resultKey)),
    remarks,
  };
};

export type Duty = Awaited<ReturnType<typeof loadDuty>>;
