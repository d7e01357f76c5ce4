import { insertCustomer } from "@/lib/data/customer/customer-store";
import { eventOf } from "@/lib/domain/audit/define-event";
import { customerEvents } from "@/lib/domain/customer/events";
import { CustomerInput } from "@/lib/domain/customer/schema";
import { defineOperation } from "../operation";

export const recordCustomer = defineOperation({
  name: "customer/record",
  permission: "customer.record",
  input: CustomerInput,
  perform: async ({ tx }, input) => {
    const { id } = await insertCustomer(tx, input);
    return { value: { id }, events: [eventOf(customerEvents.recorded, id, { name: input.name })] };
  },
});
