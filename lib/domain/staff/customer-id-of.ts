import { Refused } from "../refusal";
import type { Actor } from "./actor";

/** What only somebody of a customer does: in whose name. */
export const customerIdOf = (actor: Actor): string => {
  if (actor.kind !== "customer")
    throw new Refused({
      code: "not-permitted",
      message: "This is done by a customer's own people. Nothing was changed.",
    });
  return actor.customerId;
};
