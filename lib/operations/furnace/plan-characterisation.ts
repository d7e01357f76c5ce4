import { insertCharacterisationRun } from "@/lib/data/furnace/characterisation-run-store";
import { loadConfiguration } from "@/lib/data/furnace/configuration-store";
import { canonical } from "@/lib/domain/audit/canonical";
import { eventOf } from "@/lib/domain/audit/define-event";
import { decidePlan } from "@/lib/domain/furnace/characterisation-plan";
import { furnaceEvents } from "@/lib/domain/furnace/events";
import { PlanCharacterisationInput } from "@/lib/domain/furnace/schema";
import { demand, Refused } from "@/lib/domain/refusal";
import { personIdOf } from "@/lib/domain/staff/person-id-of";
import { defineOperation } from "../operation";

/** What is to be measured of a configuration: temperatures, length, probe and monitor. */
export const planCharacterisation = defineOperation({
  name: "furnace/plan-characterisation",
  permission: "furnace.record",
  input: PlanCharacterisationInput,
  perform: async ({ actor, now, tx }, { configurationId, plan }) => {
    const configuration = await loadConfiguration(tx, configurationId);
    if (!configuration) throw new Refused({ code: "not-found", message: "This configuration is not here." });
    const { furnace, name } = configuration;
    demand(decidePlan(plan, furnace));
    const { id, number } = await insertCharacterisationRun(tx, {
      configurationId,
      plan: canonical(plan),
      performerId: personIdOf(actor),
      createdAt: now,
    });
    const temperatures = [...plan.temperatures];
    const payload = { tag: furnace.tag, name, run: number, temperatures };
    return {
      value: { id, number, furnaceId: furnace.id },
      events: [eventOf(furnaceEvents.characterisationPlanned, furnace.id, payload)],
    };
  },
});
