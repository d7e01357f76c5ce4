import { loadSigningPolicy, saveSigningPolicy } from "@/lib/data/signing/signing-policy-store";
import { eventOf } from "@/lib/domain/audit/define-event";
import { Refused } from "@/lib/domain/refusal";
import { signingEvents } from "@/lib/domain/signing/events";
import { SigningPolicyInput } from "@/lib/domain/signing/policy";
import { defineOperation } from "../operation";

/** How long a session of signing lasts: it holds for the sessions that run, too. */
export const changeSigningPolicy = defineOperation({
  name: "signing/change-policy",
  permission: "laboratory.configure",
  input: SigningPolicyInput,
  perform: async ({ tx }, { version, policy }) => {
    const before = JSON.stringify(await loadSigningPolicy(tx));
    const after = JSON.stringify(policy);
    if (before === after)
      throw new Refused({ code: "rule", message: "Nothing differs from what is stored." });
    await saveSigningPolicy(tx, version, policy);
    return {
      value: { id: "laboratory" },
      events: [eventOf(signingEvents.policyChanged, "laboratory", { before, after })],
    };
  },
});
