import { inSnapshot, type Tx } from "@/lib/data/in-scope";
import { Refused } from "@/lib/domain/refusal";
import { type Actor, scopeOf } from "@/lib/domain/staff/actor";
import { may, type Permission } from "@/lib/domain/staff/permissions";

/** Every view is answered in here: permission first, then one scoped transaction, so that customers see only their own. */
export const answer = async <T>(
  actor: Actor,
  permission: Permission,
  question: (tx: Tx) => Promise<T>,
): Promise<T> => {
  if (actor.kind !== "system" && !may(actor.roles, permission))
    throw new Refused({ code: "not-permitted", message: "Your roles do not allow this page." });
  return inSnapshot(scopeOf(actor), question);
};

/** Not there, or not yours: the two look the same. */
export const found = <T>(value: T | null | undefined): T => {
  if (value === null || value === undefined)
    throw new Refused({ code: "not-found", message: "This is not here." });
  return value;
};
