import { z } from "zod";
import { inScope } from "@/lib/data/in-scope";
import { installProcedures } from "@/lib/data/procedure/install-procedures";
import { Refused } from "@/lib/domain/refusal";
import { type Clock, execute } from "../execute";
import { defineOperation } from "../operation";

export const installFounding = defineOperation({
  name: "procedure/install",
  permission: "system",
  input: z.strictObject({}),
  perform: async ({ now, tx }) => {
    const [first, ...others] = await installProcedures(tx, now);
    if (!first)
      throw new Refused({ code: "wrong-state", message: "Every procedure of the platform is here already." });
    return { value: null, events: [first, ...others] };
  },
});

/** For a laboratory founded before procedures were records: once, at start. A laboratory to come gets them when founded. */
export const ensureProcedures = async (clock: Clock = () => new Date()): Promise<void> => {
  const isNeeded = await inScope({ kind: "laboratory" }, async (tx) => {
    const [laboratories, procedures] = [await tx.laboratory.count(), await tx.procedure.count()];
    return laboratories > 0 && procedures === 0;
  });
  if (!isNeeded) return;
  try {
    await execute(installFounding, { kind: "system", name: "start" }, {}, clock);
  } catch (error) {
    // Another server of the same database was first.
    if (!(error instanceof Refused) || error.refusal.code !== "wrong-state") throw error;
  }
};
