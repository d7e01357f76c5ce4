import type { ProcedureRevision } from "@/lib/domain/procedure/types";
import { Refused } from "@/lib/domain/refusal";
import type { Tx } from "../in-scope";
import { loadCurrentRevision } from "./procedure-store";

/** What a run made now follows. Only a current revision can be chosen, by whatever name. */
export const demandCurrentRevision = async (tx: Tx, key: string): Promise<ProcedureRevision> => {
  const revision = await loadCurrentRevision(tx, key);
  if (revision) return revision;
  throw new Refused({
    code: "rule",
    message: "The run was not made: some of it is not allowed. What you entered is still here.",
    fields: { procedure: `${key} has no current revision. Choose a procedure that has one.` },
  });
};
