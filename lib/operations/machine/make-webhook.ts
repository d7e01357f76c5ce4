import { randomBytes } from "node:crypto";
import { insertWebhook, loadWebhooks } from "@/lib/data/machine/webhook-store";
import { eventOf } from "@/lib/domain/audit/define-event";
import { machineEvents } from "@/lib/domain/machine/events";
import { MakeWebhookInput } from "@/lib/domain/machine/schema";
import { secretPrefix } from "@/lib/domain/machine/webhook-text";
import { Refused } from "@/lib/domain/refusal";
import { defineOperation } from "../operation";

const mostWebhooks = 5;

/** An address that is told of what happens. Its secret is shown this once; the database has it sealed. */
export const makeWebhook = defineOperation({
  name: "machine/make-webhook",
  permission: "portal.manage",
  scope: "laboratory",
  input: MakeWebhookInput,
  perform: async ({ actor, now, tx }, { url, topics }) => {
    if (actor.kind !== "customer")
      throw new Refused({ code: "not-permitted", message: "Somebody of the customer sets this up." });
    const { customerId, personId } = actor;
    if ((await loadWebhooks(tx, customerId)).length >= mostWebhooks)
      throw new Refused({
        code: "rule",
        message: `At most ${mostWebhooks} addresses. End one first; nothing was stored.`,
      });
    const secret = randomBytes(32);
    const id = await insertWebhook(tx, { customerId, url, topics, secret, madeById: personId, madeAt: now });
    const event = eventOf(machineEvents.webhookMade, id, { url, topics, customerId });
    return { value: { id, secret: `${secretPrefix}${secret.toString("base64")}` }, events: [event] };
  },
});
