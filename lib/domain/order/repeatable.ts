import { ok, type Result, refuse } from "../refusal";
import type { OrderState } from "./transitions";

/** The order that is to be done once more; null: there is none of this number, or none of theirs. */
export const decideRepeatable = <O extends { readonly state: OrderState }>(order: O | null): Result<O> => {
  if (!order) return refuse("not-found", "The order to repeat is not here. Nothing was stored.");
  return order.state === "requested"
    ? refuse(
        "wrong-state",
        "The order to repeat is a request that nobody has looked at yet; there is nothing to repeat. Nothing was stored.",
      )
    : ok(order);
};
