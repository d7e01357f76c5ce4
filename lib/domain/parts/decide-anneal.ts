import type { LineOptions } from "../order/options";
import { ok, type Result, refuse } from "../refusal";

type Facts = {
  readonly sensor: string;
  readonly state: string;
  readonly options: LineOptions;
  /** Whether results as received are kept for its certificate. */
  readonly hasReceivedSet: boolean;
  readonly performedOn: string;
  readonly today: string;
};

/** Annealing changes a sensor for good: only where it was ordered, and not before it was measured as it came. */
export const decideAnneal = (facts: Facts): Result<null> => {
  const { sensor, options } = facts;
  if (facts.performedOn > facts.today)
    return refuse("invalid", "Nothing was stored.", { performedOn: "That day has not come yet." });
  if (options.sets === "as-received")
    return refuse(
      "rule",
      `The order of ${sensor} does not ask for annealing, and it changes the sensor for good. Change the order first, with the customer's word. Nothing was stored.`,
    );
  if (facts.state !== "received")
    return refuse(
      "wrong-state",
      `${sensor} is ${facts.state}; annealing is recorded while it waits for its next run. Nothing was stored.`,
    );
  if (options.sets === "both" && !facts.hasReceivedSet)
    return refuse(
      "rule",
      `${sensor} is to be measured as received first. Once a signatory has kept those results, anneal it. Nothing was stored.`,
    );
  return ok(null);
};
