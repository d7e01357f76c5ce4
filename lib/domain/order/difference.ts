import { z } from "zod";
import { ok, type Result, refuse } from "../refusal";
import { optionalText } from "./field";
import type { OrderState } from "./transitions";

/** What was asked and what the laboratory can do differ (ISO/IEC 17025:2017, 7.1.4): told, and settled before acceptance. */

const said = (message: string) => optionalText(1000).refine((text) => text.length >= 3, message);

export const RaiseDifferenceInput = z.object({
  number: z.string(),
  text: said("Say what was asked, and what can be done instead."),
});

export const SettleDifferenceInput = z.object({
  number: z.string(),
  differenceId: z.uuid("This difference is not here. Reload the page."),
  text: said("Say how it was settled."),
  agreedWith: optionalText(120).refine((text) => text.length >= 2, "Write with whom of the customer."),
});

type Difference = { readonly id: string; readonly text: string; readonly isSettled: boolean };

export const decideRaise = (state: OrderState): Result<"raised"> =>
  state === "completed" || state === "cancelled"
    ? refuse("wrong-state", `This order is ${state}: nothing about it is open. Nothing was stored.`)
    : ok("raised");

export const decideSettle = (differences: readonly Difference[], id: string): Result<"settled"> => {
  const difference = differences.find((one) => one.id === id);
  if (!difference)
    return refuse("not-found", "This difference is not of this order. Reload the page. Nothing was stored.");
  return difference.isSettled
    ? refuse("changed-meanwhile", "Somebody settled it in between. Nothing was stored.")
    : ok("settled");
};

/** `then`: what may be done once they are settled, as said to whoever is refused it. */
export const decideDifferencesSettled = (
  differences: readonly Difference[],
  then: string,
  orderNumber?: string,
): Result<"settled"> => {
  const open = differences.filter(({ isSettled }) => !isSettled);
  return open.length === 0
    ? ok("settled")
    : refuse(
        "rule",
        `${open.length === 1 ? "A difference is" : `${open.length} differences are`} not settled with the customer: ${open.map(({ text }) => `“${text}”`).join(", ")}. Settle it under “Differences” of ${orderNumber ? `order ${orderNumber}` : "the order"}, then ${then}. Nothing was changed.`,
      );
};
