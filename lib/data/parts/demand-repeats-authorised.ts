import { decideRepeatsAuthorised } from "@/lib/domain/parts/decide-repeat";
import { demand } from "@/lib/domain/refusal";
import type { Tx } from "../in-scope";
import type { Run } from "../run/load-run";
import { earlierResults } from "./earlier-results";

/** Before the first reading: which measurement counts has been said. Later blocks follow the first. */
export const demandRepeatsAuthorised = async (tx: Tx, run: Run): Promise<void> => {
  if (run.startedAt !== null) return;
  const lacking = (await earlierResults(tx, run)).filter(({ isAuthorised }) => !isAuthorised);
  demand(
    decideRepeatsAuthorised(
      run.number,
      lacking.map(({ tag }) => tag),
    ),
  );
};
