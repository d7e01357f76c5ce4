import { insertAddress } from "@/lib/data/portal/address-store";
import { addressEvents } from "@/lib/domain/address/events";
import { AddressInput } from "@/lib/domain/address/schema";
import { eventOf } from "@/lib/domain/audit/define-event";
import { customerIdOf } from "@/lib/domain/staff/customer-id-of";
import { defineOperation } from "../operation";

export const addAddress = defineOperation({
  name: "portal/add-address",
  permission: "portal.manage",
  scope: "laboratory",
  input: AddressInput,
  perform: async ({ actor, tx }, input) => {
    const customerId = customerIdOf(actor);
    const id = await insertAddress(tx, customerId, input);
    return { value: { id }, events: [eventOf(addressEvents.added, id, { customerId, kind: input.kind })] };
  },
});
