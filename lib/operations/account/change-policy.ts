import { loadAccountPolicy, saveAccountPolicy } from "@/lib/data/account/account-policy-store";
import { accountEvents } from "@/lib/domain/account/events";
import { AccountPolicyInput } from "@/lib/domain/account/policy";
import { eventOf } from "@/lib/domain/audit/define-event";
import { Refused } from "@/lib/domain/refusal";
import { defineOperation } from "../operation";

/** How the laboratory lets people in: it holds for the sessions that are open, too. */
export const changeAccountPolicy = defineOperation({
  name: "account/change-policy",
  permission: "laboratory.configure",
  input: AccountPolicyInput,
  perform: async ({ tx }, { version, policy }) => {
    const before = JSON.stringify(await loadAccountPolicy(tx));
    const after = JSON.stringify(policy);
    if (before === after)
      throw new Refused({ code: "rule", message: "Nothing differs from what is stored." });
    await saveAccountPolicy(tx, version, policy);
    return {
      value: { id: "laboratory" },
      events: [eventOf(accountEvents.policyChanged, "laboratory", { before, after })],
    };
  },
});
