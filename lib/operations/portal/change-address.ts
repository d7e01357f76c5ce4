import { loadAddress, saveAddress } from "@/lib/data/portal/address-store";
import { addressEvents } from "@/lib/domain/address/events";
import { AddressChange } from "@/lib/domain/address/schema";
import { changedFields } from "@/lib/domain/audit/changed-fields";
import { eventOf } from "@/lib/domain/audit/define-event";
import { Refused } from "@/lib/domain/refusal";
import { demandOwn } from "@/lib/domain/staff/demand-own";
import { defineOperation } from "../operation";

export const changeAddress = defineOperation({
  name: "portal/change-address",
  permission: "portal.manage",
  scope: "laboratory",
  input: AddressChange,
  perform: async ({ actor, tx }, { id, version, ...fields }) => {
    const before = await loadAddress(tx, id);
    const customerId = demandOwn(actor, before?.customerId);
    const changed = before ? changedFields(before, fields) : [];
    if (changed.length === 0)
      throw new Refused({ code: "rule", message: "Nothing differs from what is stored." });
    await saveAddress(tx, id, version, fields);
    const payload = { customerId, kind: fields.kind, changed };
    return { value: { id }, events: [eventOf(addressEvents.changed, id, payload)] };
  },
});
