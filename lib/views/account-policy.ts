import { loadAccountPolicy } from "@/lib/data/account/account-policy-store";
import { loadSigningPolicy } from "@/lib/data/signing/signing-policy-store";
import type { Actor } from "@/lib/domain/staff/actor";
import { answer, found } from "./view";

/** How the laboratory lets people in, for whoever manages people. */
export const accountPolicyView = (actor: Actor) =>
  answer(actor, "person.read", async (tx) => ({
    policy: await loadAccountPolicy(tx),
    signing: await loadSigningPolicy(tx),
    version: found(await tx.laboratory.findUnique({ where: { id: "laboratory" }, select: { version: true } }))
      .version,
  }));
