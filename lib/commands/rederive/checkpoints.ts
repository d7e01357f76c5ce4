import { loadCarried } from "@/lib/data/audit/load-carried";
import { inScope } from "@/lib/data/in-scope";
import { describeUnheld, firstUnheld } from "@/lib/domain/audit/carried-checkpoints";
import { Broken, counted, laboratory } from "./step";

/** Holds the log against what certificates took with them of it: a log rewritten as a whole still links. */
export const rederiveCheckpoints = async (): Promise<string> => {
  const carried = await inScope(laboratory, loadCarried);
  const unheld = firstUnheld(carried);
  if (unheld) throw new Broken(`audit event ${unheld.sequence}`, describeUnheld(unheld));
  return `${counted(carried.length, "certificate")} signed over the log as it is`;
};
