import { loadInDoubt } from "@/lib/data/equipment/in-doubt";
import type { Tx } from "@/lib/data/in-scope";
import type { ReviewRun } from "@/lib/data/review/load-review-run";
import { demand } from "@/lib/domain/refusal";
import { decideNotInDoubt } from "@/lib/domain/review/decide-not-in-doubt";

/** No standard or instrument of the run is in doubt, or what that does to its results was examined. */
export const demandNotInDoubt = async (tx: Tx, { run }: ReviewRun): Promise<void> => {
  demand(decideNotInDoubt(await loadInDoubt(tx, run)));
};
