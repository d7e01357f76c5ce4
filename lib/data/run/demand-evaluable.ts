import { demand } from "@/lib/domain/refusal";
import { demandOpen } from "@/lib/domain/run/states";
import { awaitsReplacement } from "../amendment/load-replacing";
import type { Tx } from "../in-scope";

type Stored = { readonly id: string; readonly number: string; readonly state: string };

/**
 * What an evaluation rests on can be said while the run lies with the technician; and signed off, while a certificate is
 * to be replaced by what comes out. What was measured stays as it is either way.
 */
export const demandEvaluable = async (tx: Tx, run: Stored): Promise<void> => {
  if (run.state !== "signed-off" || !(await awaitsReplacement(tx, run.id))) demand(demandOpen(run));
};
