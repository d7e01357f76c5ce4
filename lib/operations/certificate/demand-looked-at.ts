import type { Tx } from "@/lib/data/in-scope";
import { loadOpened } from "@/lib/data/review/load-opened";
import { loadRemarks } from "@/lib/data/review/load-remarks";
import type { ReviewRun } from "@/lib/data/review/load-review-run";
import { sha256 } from "@/lib/data/sha256";
import { demand } from "@/lib/domain/refusal";
import { decideOpened } from "@/lib/domain/review/decide-opened";
import { decideSettled } from "@/lib/domain/review/decide-settled";
import { demandNotInDoubt } from "./demand-not-in-doubt";

/**
 * Nothing the results stand on is in doubt, what stands out and what the lot named was opened by whoever signs, and no
 * remark on it is left without an answer.
 */
export const demandLookedAt = async (
  tx: Tx,
  review: ReviewRun,
  personId: string,
  sensorIds: readonly string[],
) => {
  await demandNotInDoubt(tx, review);
  const sensors = review.sensors.filter(({ id }) => sensorIds.includes(id)).map(({ tag }) => tag);
  demand(decideOpened({ ...(await loadOpened(tx, review, personId)), sha256, sensors }));
  demand(decideSettled(await loadRemarks(tx, review), sensors));
};
