import { loadCustomer, saveCustomer } from "@/lib/data/customer/customer-store";
import { changedFields } from "@/lib/domain/audit/changed-fields";
import { eventOf } from "@/lib/domain/audit/define-event";
import { customerEvents } from "@/lib/domain/customer/events";
import { CustomerChange } from "@/lib/domain/customer/schema";
import { Refused } from "@/lib/domain/refusal";
import { defineOperation } from "../operation";

export const changeCustomer = defineOperation({
  name: "customer/change",
  permission: "customer.record",
  input: CustomerChange,
  perform: async ({ tx }, { id, version, ...fields }) => {
    const before = await loadCustomer(tx, id);
    if (!before) throw new Refused({ code: "not-found", message: "This customer is not here." });
    const changed = changedFields(before, fields);
    if (changed.length === 0)
      throw new Refused({ code: "rule", message: "Nothing differs from what is stored." });
    await saveCustomer(tx, id, version, fields);
    return { value: { id }, events: [eventOf(customerEvents.changed, id, { name: fields.name, changed })] };
  },
});
