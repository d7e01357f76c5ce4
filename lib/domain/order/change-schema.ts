import { z } from "zod";
import { optionalText } from "./field";
import { reviewFields, toldCustomerField } from "./review";
import { AmendOrderInput } from "./schema";

/** Why an accepted order changes, who of the customer agreed, and the four questions again (ISO/IEC 17025:2017, 7.1.6). */
const changeFields = {
  ...reviewFields,
  toldCustomer: toldCustomerField,
  reason: optionalText(1000).refine((text) => text.length >= 3, "Say why it changes, in a few words."),
  agreedWith: optionalText(120).refine((text) => text.length >= 2, "Write who of the customer agreed to it."),
};

/** The lines as in an amendment, and what a change asks besides. */
export const ChangeOrderInput = z.intersection(AmendOrderInput, z.object(changeFields));

export const AcknowledgeChangeInput = z.object({
  run: z.string(),
  changeId: z.uuid("This change is not here. Reload the page."),
});
