import type { OrderState } from "../order/transitions";
import { ok, type Result, refuse } from "../refusal";
import type { PromiseProposal } from "./propose-promise";

type Wish = { readonly promisedOn: string; readonly reason: string };

/** The proposed day, or another with a reason. A promise lies ahead, and is of work that is to be done. */
export const decidePromise = (
  state: OrderState,
  proposal: PromiseProposal,
  wish: Wish,
  today: string,
): Result<"promise"> => {
  if (state !== "recorded" && state !== "accepted")
    return refuse("wrong-state", `This order is ${state}: no day is promised for it. Nothing was changed.`);
  if (wish.promisedOn < today)
    return refuse("rule", "A promise lies ahead. Nothing was changed.", {
      promisedOn: "Write today or a later day.",
    });
  const proposed = proposal.kind === "proposed" ? proposal.promisedOn : null;
  if (wish.promisedOn !== proposed && wish.reason === "")
    return refuse("rule", "Another day than the reckoned one needs a reason. Nothing was changed.", {
      reason:
        proposed === null
          ? "No day could be reckoned: say what this one stands on."
          : `The furnaces allow ${proposed}. Say why it is another day.`,
    });
  return ok("promise");
};
