import { ColleagueInvitation } from "@/lib/domain/account/schema";
import { Refused } from "@/lib/domain/refusal";
import { demandOwn } from "@/lib/domain/staff/demand-own";
import { defineOperation } from "../operation";
import { writeInvitation } from "./write-invitation";

/**
 * By somebody of a customer, for their own customer, whatever the browser says. An address that signs in elsewhere is
 * invited all the same: the answer must not tell who else has an account. The link then says so to its owner.
 */
export const inviteColleague = defineOperation({
  name: "account/invite-colleague",
  permission: "portal.manage",
  scope: "laboratory",
  input: ColleagueInvitation,
  perform: async ({ actor, now, tx }, input) => {
    const customerId = demandOwn(actor, actor.kind === "customer" ? actor.customerId : null);
    const known = await tx.person.findUnique({ where: { email: input.email }, select: { customerId: true } });
    if (known?.customerId === customerId)
      throw new Refused({
        code: "invalid",
        message: "Nobody was invited; what you typed is still here.",
        fields: { email: "A colleague signs in with this address already." },
      });
    const madeById = actor.kind === "system" ? null : actor.personId;
    return writeInvitation(tx, { ...input, customerId, madeById }, now);
  },
});
