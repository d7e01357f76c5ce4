import { given, type Message, say } from "./catalogue/message";

/** Sentences of certificates that carry several sets or sensors, or what was asked for beyond the points. */

export type Anneal = {
  readonly celsius: number;
  readonly hours: number;
  readonly manner: string;
  readonly performedOn: string;
};

const annealPlaces = ({ celsius, hours, manner, performedOn }: Anneal) => ({
  celsius: String(celsius),
  hours: String(hours),
  manner: given(manner),
  day: performedOn,
});

/** 7.8.4.1 d: what was done to the item, between the results before it and those after it. */
export const annealed = (anneal: Anneal): Message => say("anneal.done", annealPlaces(anneal));

export const annealedItem = (tag: string, anneal: Anneal): Message =>
  say("history.annealed", { tag, ...annealPlaces(anneal) });

export const beforeAndAfter = say("anneal.before-and-after");
export const onlyAfter = say("anneal.only-after");

/** Instead of "in the condition in which it was received". */
export const relatesAnnealed = say("relates.annealed");

export const setsStatement = say("sets.each");
export const changeStatement = say("change.statement");
export const lotStatement = say("lot.statement");
export const rollsStatement = say("rolls.statement");
export const evidenceOnRequest = say("evidence.on-request");

export const atCustomerSite = (address: string): Message =>
  address === "" ? say("place.customer-site") : say("place.customer-site-at", { address });

/** 7.8.2.1 p */
export const fromProvider = (provider: string): Message => say("external.provider", { provider });
