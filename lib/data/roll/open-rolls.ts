import { agreementOf, type RollAgreement, rollsToAsk } from "@/lib/domain/order/decide-roll-ends";
import { rollName } from "@/lib/domain/order/roll-ends";
import type { Order } from "@/lib/domain/order/types";
import type { Tx } from "../in-scope";
import { loadRolls } from "./load-rolls";

/** A roll of which one end alone is here, and what the customer said to it; null: nothing yet. */
export type OpenRoll = {
  readonly lot: string;
  readonly roll: string;
  readonly name: string;
  readonly tags: readonly string[];
  readonly agreement: Pick<RollAgreement, "agreedWith" | "text"> | null;
};

/** Rolls of an audited order of which one end alone is here, and whose certificate waits for it; none under no rule set. */
export const openRolls = async (
  tx: Tx,
  order: Pick<Order, "id" | "number" | "ruleSet" | "lines">,
): Promise<readonly OpenRoll[]> => {
  const rolls = await loadRolls(tx, order);
  return rollsToAsk(rolls).map((roll) => {
    const agreed = agreementOf(rolls, roll);
    return {
      ...roll,
      name: rollName(roll),
      agreement: agreed ? { agreedWith: agreed.agreedWith, text: agreed.text } : null,
    };
  });
};
