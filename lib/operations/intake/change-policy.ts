import { loadIntakePolicy, saveIntakePolicy } from "@/lib/data/intake/intake-policy-store";
import { canonical } from "@/lib/domain/audit/canonical";
import { eventOf } from "@/lib/domain/audit/define-event";
import { ChangeIntakePolicyInput } from "@/lib/domain/intake/change-policy";
import { Refused } from "@/lib/domain/refusal";
import { sensorEvents } from "@/lib/domain/sensor/events";
import { defineOperation } from "../operation";

/** The limits sensors are held against from now on; those taken in keep the verdict of their day. */
export const changeIntakePolicy = defineOperation({
  name: "intake/change-policy",
  permission: "laboratory.configure",
  input: ChangeIntakePolicyInput,
  perform: async ({ tx }, { version, policy, reason }) => {
    const before = canonical((await loadIntakePolicy(tx)).policy);
    const after = canonical(policy);
    if (before === after)
      throw new Refused({
        code: "rule",
        message: "Nothing differs from what is stored. Nothing was changed.",
      });
    await saveIntakePolicy(tx, version, policy);
    return {
      value: null,
      events: [eventOf(sensorEvents.intakePolicyChanged, "laboratory", { before, after, reason })],
    };
  },
});
