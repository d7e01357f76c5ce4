import { z } from "zod";
import { loadAddress, saveAddress } from "@/lib/data/portal/address-store";
import { addressEvents } from "@/lib/domain/address/events";
import { eventOf } from "@/lib/domain/audit/define-event";
import { Refused } from "@/lib/domain/refusal";
import { demandOwn } from "@/lib/domain/staff/demand-own";
import { rowVersion } from "@/lib/domain/typed-text";
import { defineOperation } from "../operation";

/** Orders keep the address they were given; a new one is offered those in use. */
export const setAddressActive = defineOperation({
  name: "portal/set-address-active",
  permission: "portal.manage",
  scope: "laboratory",
  input: z.strictObject({ id: z.uuid(), version: rowVersion, active: z.boolean() }),
  perform: async ({ actor, tx }, { id, version, active }) => {
    const address = await loadAddress(tx, id);
    const customerId = demandOwn(actor, address?.customerId);
    if (!address || address.active === active)
      throw new Refused({ code: "wrong-state", message: "That is so already; nothing was changed." });
    await saveAddress(tx, id, version, { active });
    const event = active ? addressEvents.reactivated : addressEvents.deactivated;
    return { value: { id }, events: [eventOf(event, id, { customerId, kind: address.kind })] };
  },
});
