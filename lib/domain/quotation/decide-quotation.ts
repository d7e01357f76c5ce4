import type { ComposedPrice } from "../price/compose-price";
import { ok, type Result, refuse } from "../refusal";
import type { OfferedOrder } from "./offered-order";

/** Days after today that an offer stays open at most: a price of another year is another offer. */
const longestDays = 366;

/** Whether an offer may go out: open work, each line with its setpoints, a price for all that is asked for. */
export const decideQuotation = (
  order: Pick<OfferedOrder, "state" | "lines">,
  price: ComposedPrice,
  validUntil: string,
  today: string,
): Result<"offer"> => {
  if (order.state !== "recorded" && order.state !== "accepted")
    return refuse(
      "wrong-state",
      order.state === "requested"
        ? "This order is a request nobody has recorded yet. Record it first, then make the offer."
        : `This order is ${order.state}: nothing is offered for it any more.`,
    );
  const empty = order.lines.find(({ setpoints }) => setpoints.length === 0);
  if (empty)
    return refuse(
      "rule",
      `Line ${empty.position} has no setpoints yet. Amend the order, then make the offer.`,
    );
  if (validUntil < today)
    return refuse("rule", "An offer does not end before it is made. Nothing was stored.", {
      validUntil: "Write today or a later day.",
    });
  if (Date.parse(validUntil) - Date.parse(today) > longestDays * 86_400_000)
    return refuse("rule", "An offer stays open for a year at most. Nothing was stored.", {
      validUntil: "Write a day within a year.",
    });
  if (price.missing.length > 0)
    return refuse(
      "rule",
      `The list of prices has nothing for ${price.missing.join("; ")}. Record a price (nought is one), then make the offer.`,
    );
  return ok("offer");
};
