import { hex } from "@/lib/data/hex";
import type { Tx } from "@/lib/data/in-scope";
import { sha256 } from "@/lib/data/sha256";
import { canonical } from "@/lib/domain/audit/canonical";
import type { PromisePolicy } from "@/lib/domain/promise/policy";
import { type PromiseProposal, proposePromise } from "@/lib/domain/promise/propose-promise";
import { loadPlannedFurnaces, loadPlannedOrder, loadTaken, loadWaitingOrders } from "./plan-store";
import { loadPromisePolicy } from "./policy-store";

/** From the morning after, or from the morning after the sensors come: a plan of today is late already. */
const fromDay = (now: Date, arrivesOn: string | null): number => {
  const dayLength = 86_400_000;
  const tomorrow = (Math.floor(now.getTime() / dayLength) + 1) * dayLength;
  return arrivesOn === null ? tomorrow : Math.max(tomorrow, Date.parse(`${arrivesOn}T00:00:00Z`) + dayLength);
};

/** What the furnaces allow for an order today, and the hash by which a form names it. */
export const proposeFor = async (
  tx: Tx,
  order: { readonly id: string; readonly number: string },
  arrivesOn: string | null,
  now: Date,
): Promise<{
  readonly proposal: PromiseProposal;
  readonly shown: string;
  readonly policy: PromisePolicy;
}> => {
  const { policy } = await loadPromisePolicy(tx);
  const planned = await loadPlannedOrder(tx, order.number);
  const proposal: PromiseProposal = planned
    ? proposePromise({
        order: planned,
        waiting: await loadWaitingOrders(tx),
        furnaces: await loadPlannedFurnaces(tx, now),
        taken: await loadTaken(tx, now, policy, order.id),
        from: fromDay(now, arrivesOn),
        policy,
      })
    : { kind: "impossible", reason: "This order is not here." };
  const text = canonical({ ...proposal, arrivesOn } as unknown);
  return { proposal, shown: hex(sha256(new TextEncoder().encode(text))), policy };
};
