import type { ReviewException } from "@/lib/domain/review/exceptions";
import type { Tx } from "../in-scope";
import type { ReviewRun } from "./load-review-run";
import { exceptionsOf } from "./review-summary";

/** What stands out in the whole evaluation, also of sensors that are signed for already: what must be opened rests on it. */
export const loadExceptions = async (_tx: Tx, review: ReviewRun): Promise<readonly ReviewException[]> =>
  exceptionsOf(review);
