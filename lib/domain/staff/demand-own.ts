import { Refused } from "../refusal";
import type { Actor } from "./actor";

/**
 * The customer in whose name this actor asks, where the platform writes for them in the laboratory's scope. What is
 * another customer's is "not found": the two look the same from outside.
 */
export const demandOwn = (actor: Actor, customerId: string | null | undefined): string => {
  if (actor.kind !== "customer" || actor.customerId !== customerId)
    throw new Refused({ code: "not-found", message: "This is not here. Nothing was changed." });
  return actor.customerId;
};
