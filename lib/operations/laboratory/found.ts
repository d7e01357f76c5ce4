import { z } from "zod";
import { insertLaboratory, loadLaboratory } from "@/lib/data/laboratory/laboratory-store";
import { installProcedures } from "@/lib/data/procedure/install-procedures";
import { eventOf } from "@/lib/domain/audit/define-event";
import { Refused } from "@/lib/domain/refusal";
import { staffEvents } from "@/lib/domain/staff/events";
import { LaboratoryInput } from "@/lib/domain/staff/laboratory-schema";
import { defineOperation } from "../operation";

/** The one row, made by the demonstration; an empty installation makes it through the first-access link. */
export const foundLaboratory = defineOperation({
  name: "laboratory/found",
  permission: "system",
  input: LaboratoryInput.extend({ isDemo: z.boolean().default(false) }),
  perform: async ({ now, tx }, input) => {
    if (await loadLaboratory(tx))
      throw new Refused({ code: "wrong-state", message: "The laboratory is recorded already." });
    await insertLaboratory(tx, input);
    const payload = { name: input.name, isDemo: input.isDemo };
    return {
      value: { id: "laboratory" },
      events: [
        eventOf(staffEvents.laboratoryFounded, "laboratory", payload),
        ...(await installProcedures(tx, now)),
      ],
    };
  },
});
