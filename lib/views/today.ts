import type { Tx } from "@/lib/data/in-scope";
import type { Actor } from "@/lib/domain/staff/actor";
import { may, type Permission } from "@/lib/domain/staff/permissions";
import { resultsToReview, returnedRuns, runsInProgress, sensorsToLoad } from "./today/bench";
import { ordersToAccept, ordersToReceive, sensorsToHandBack } from "./today/desk";
import { thingsDue } from "./today/due";
import { certificatesPending } from "./today/records";
import type { TodayItem, Waiting } from "./today/waiting";
import { answer } from "./view";

export type TodayList = {
  readonly key: string;
  readonly title: string;
  /** Where the whole list is. */
  readonly href: string;
  readonly count: number;
  readonly items: readonly TodayItem[];
};

type Question = {
  readonly key: string;
  readonly title: string;
  readonly href: string;
  /** Who can do something about it. */
  readonly needs: Permission;
  readonly ask: (tx: Tx, today: string) => Promise<Waiting>;
};

/** In the order in which a thing goes through the laboratory. */
const questions: readonly Question[] = [
  { key: "accept", title: "Orders to accept", href: "/orders", needs: "order.accept", ask: ordersToAccept },
  {
    key: "receive",
    title: "Sensors to take in",
    href: "/orders",
    needs: "sensor.receive",
    ask: ordersToReceive,
  },
  { key: "load", title: "Sensors to load", href: "/sensors", needs: "run.perform", ask: sensorsToLoad },
  { key: "returned", title: "Returned runs", href: "/runs", needs: "run.perform", ask: returnedRuns },
  { key: "runs", title: "Runs in progress", href: "/runs", needs: "run.perform", ask: runsInProgress },
  {
    key: "review",
    title: "Results to review",
    href: "/review",
    needs: "review.decide",
    ask: resultsToReview,
  },
  {
    key: "pending",
    title: "Certificates being made",
    href: "/certificates",
    needs: "review.decide",
    ask: certificatesPending,
  },
  {
    key: "hand-back",
    title: "Sensors to hand back",
    href: "/sensors",
    needs: "sensor.release",
    ask: sensorsToHandBack,
  },
  { key: "due", title: "Due or out of date", href: "/standards", needs: "equipment.record", ask: thingsDue },
];

/** What waits for this person, by what their roles let them do about it. */
export const todayView = (actor: Actor, today: string): Promise<TodayList[]> =>
  answer(actor, "laboratory.read", async (tx) => {
    const roles = actor.kind === "system" ? [] : actor.roles;
    const lists: TodayList[] = [];
    for (const { key, title, href, needs, ask } of questions)
      if (may(roles, needs)) lists.push({ key, title, href, ...(await ask(tx, today)) });
    return lists;
  });
