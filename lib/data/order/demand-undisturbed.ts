import { decideUndisturbed } from "@/lib/domain/order/undisturbed";
import { demand } from "@/lib/domain/refusal";
import type { Tx } from "../in-scope";
import { loadOpenChanges } from "./change-store";

/** The refusal while a change of an order in the run's load is not acknowledged. */
export const demandUndisturbed = async (
  tx: Tx,
  run: { readonly id: string; readonly number: string; readonly createdAt: Date },
): Promise<void> => {
  demand(decideUndisturbed(run, await loadOpenChanges(tx, run)));
};
