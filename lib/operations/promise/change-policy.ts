import { loadPromisePolicy, savePromisePolicy } from "@/lib/data/promise/policy-store";
import { canonical } from "@/lib/domain/audit/canonical";
import { eventOf } from "@/lib/domain/audit/define-event";
import { ChangePromisePolicyInput } from "@/lib/domain/promise/change-policy";
import { promiseEvents } from "@/lib/domain/promise/events";
import { Refused } from "@/lib/domain/refusal";
import { defineOperation } from "../operation";

/** What days are promised by from now on; those promised keep what they were reckoned with. */
export const changePromisePolicy = defineOperation({
  name: "promise/change-policy",
  permission: "laboratory.configure",
  input: ChangePromisePolicyInput,
  perform: async ({ tx }, { version, policy, reason }) => {
    const before = canonical((await loadPromisePolicy(tx)).policy);
    const after = canonical(policy);
    if (before === after)
      throw new Refused({
        code: "rule",
        message: "Nothing differs from what is stored. Nothing was changed.",
      });
    await savePromisePolicy(tx, version, policy);
    return {
      value: null,
      events: [eventOf(promiseEvents.policyChanged, "laboratory", { before, after, reason })],
    };
  },
});
