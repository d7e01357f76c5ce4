import type { Tx } from "@/lib/data/in-scope";
import type { Actor } from "@/lib/domain/staff/actor";
import { may, type Permission } from "@/lib/domain/staff/permissions";
import {
  hotFurnaces,
  plannedRuns,
  providersToCheck,
  resultsToReview,
  returnedRuns,
  runsAtTheGate,
  sensorsForProviders,
  sensorsToLoad,
} from "./today/bench";
import {
  ordersDeclined,
  ordersHeld,
  ordersLate,
  ordersRequested,
  ordersToAccept,
  ordersToReceive,
  ordersWaiting,
  sensorsToHandBack,
} from "./today/desk";
import { thingsDue } from "./today/due";
import {
  amendmentsAsked,
  certificatesPending,
  complaints,
  nonconformingWork,
  remarksOpen,
  secondLooksOwed,
} from "./today/records";
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

type Told = readonly [key: string, title: string, href: string, needs: Permission, ask: Question["ask"]];

/** In the order in which a thing goes through the laboratory. */
const told: readonly Told[] = [
  ["late", "Late orders", "/orders?only=late", "order.accept", ordersLate],
  ["requested", "Asked for by customers", "/orders?show=requested", "order.record", ordersRequested],
  ["declined", "Offers declined", "/orders?only=declined", "order.record", ordersDeclined],
  ["accept", "Orders to accept", "/orders?show=recorded", "order.accept", ordersToAccept],
  ["receive", "Orders with sensors to take in", "/orders?only=expected", "sensor.receive", ordersToReceive],
  ["waiting", "Waiting for the customer", "/orders?only=waiting", "order.accept", ordersWaiting],
  ["held", "On hold", "/orders?only=held", "hold.release", ordersHeld],
  ["hot", "Furnaces hot now", "/board#furnaces", "run.perform", hotFurnaces],
  ["returned", "Returned runs", "/runs?show=returned", "run.perform", returnedRuns],
  ["runs", "Planned runs", "/runs?show=planned", "run.perform", plannedRuns],
  ["gate", "Stopped at the gate", "/runs?show=planned", "run.perform", runsAtTheGate],
  ["load", "Sensors to load", "/sensors?only=load", "run.perform", sensorsToLoad],
  ["provider", "For a provider to measure", "/sensors?only=provider", "custody.record", sensorsForProviders],
  [
    "provider-check",
    "Providers’ certificates to check",
    "/sensors?show=all&only=provider-check",
    "provider-report.decide",
    providersToCheck,
  ],
  ["review", "Results to review", "/review", "review.decide", resultsToReview],
  ["remarks", "Remarks to answer", "/review", "run.perform", remarksOpen],
  ["amendments", "Certificates to amend or replace", "/review", "review.decide", amendmentsAsked],
  ["pending", "Certificates being made", "/certificates", "review.decide", certificatesPending],
  ["second-look", "Second looks owed", "/review", "review.second-look", secondLooksOwed],
  ["hand-back", "Sensors to hand back", "/sensors?only=hand-back", "sensor.release", sensorsToHandBack],
  [
    "nonconforming",
    "Nonconforming work open",
    "/quality?kind=nonconforming-work",
    "nonconformity.decide",
    nonconformingWork,
  ],
  ["complaints", "Complaints open", "/quality?kind=complaint", "nonconformity.decide", complaints],
  ["due", "Due or out of date", "/standards", "equipment.record", thingsDue],
];

const questions: readonly Question[] = told.map(([key, title, href, needs, ask]) => ({
  key,
  title,
  href,
  needs,
  ask,
}));

/** What waits for this person, by what their roles let them do about it. */
export const todayView = (actor: Actor, today: string): Promise<TodayList[]> =>
  answer(actor, "laboratory.read", async (tx) => {
    const roles = actor.kind === "system" ? [] : actor.roles;
    const lists: TodayList[] = [];
    for (const { key, title, href, needs, ask } of questions)
      if (may(roles, needs)) lists.push({ key, title, href, ...(await ask(tx, today)) });
    return lists;
  });
