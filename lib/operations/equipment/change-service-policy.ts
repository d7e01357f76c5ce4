import { loadServicePolicy, saveServicePolicy } from "@/lib/data/equipment/service-policy-store";
import { eventOf } from "@/lib/domain/audit/define-event";
import { equipmentEvents } from "@/lib/domain/equipment/events";
import { ServicePolicyInput } from "@/lib/domain/equipment/schema";
import { Refused } from "@/lib/domain/refusal";
import { defineOperation } from "../operation";

/** What follows where a check is overdue, a chart is out of control or an anneal was not checked: the laboratory's rule. */
export const changeServicePolicy = defineOperation({
  name: "equipment/change-service-policy",
  permission: "laboratory.configure",
  input: ServicePolicyInput,
  perform: async ({ tx }, { version, policy, reason }) => {
    const before = JSON.stringify((await loadServicePolicy(tx)).policy);
    const after = JSON.stringify(policy);
    if (before === after)
      throw new Refused({ code: "rule", message: "Nothing differs from what is stored." });
    await saveServicePolicy(tx, version, policy);
    return {
      value: { id: "laboratory" },
      events: [eventOf(equipmentEvents.servicePolicyChanged, "laboratory", { before, after, reason })],
    };
  },
});
