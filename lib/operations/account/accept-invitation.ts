import { takeLink } from "@/lib/data/account/access-link-store";
import { insertPerson } from "@/lib/data/staff/person-store";
import { accountEvents } from "@/lib/domain/account/events";
import { AcceptedInvitation } from "@/lib/domain/account/schema";
import { eventOf } from "@/lib/domain/audit/define-event";
import { Refused } from "@/lib/domain/refusal";
import { staffEvents } from "@/lib/domain/staff/events";
import { namesItsOwner } from "@/lib/domain/staff/password";
import { defineOperation } from "../operation";
import { hashPassword } from "../password-hash";

/** Whoever holds the link sets name and password, and is in; address, roles and customer are those of the invitation. */
export const acceptInvitation = defineOperation({
  name: "account/accept-invitation",
  permission: "system",
  input: AcceptedInvitation,
  perform: async ({ now, tx }, { token, name, password }) => {
    const link = await takeLink(tx, "invitation", token, now);
    if (!link)
      throw new Refused({
        code: "wrong-state",
        message:
          "This link opens nothing any more: it was used, withdrawn, or its time is over. Ask for another.",
      });
    if (namesItsOwner(password, link.email))
      throw new Refused({
        code: "invalid",
        message: "Nothing was stored. Type the password again; the rest is still here.",
        fields: { password: "It says whose it is: choose one without the e-mail address." },
      });
    const roles = JSON.parse(link.roles) as readonly string[];
    const { email, customerId } = link;
    const passwordHash = await hashPassword(password);
    const { id } = await insertPerson(tx, { name, email, customerId, roles, passwordHash });
    return {
      value: { id },
      events: [
        eventOf(accountEvents.invitationAccepted, id, { invitation: link.tokenHash }),
        eventOf(staffEvents.personAdded, id, { roles: [...roles], customerId }),
      ],
    };
  },
});
