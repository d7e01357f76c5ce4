import { z } from "zod";
import { emailAddress, requiredLine, requiredLines, rowVersion } from "../typed-text";

export const CustomerInput = z.strictObject({
  name: requiredLine("Write the customer's name as it stands on certificates.", 160),
  addressLines: requiredLines("Write the postal address, one line each.", 400),
  contactName: requiredLine("Write whom the laboratory writes to.", 120),
  email: emailAddress,
});

export const CustomerChange = CustomerInput.extend({ id: z.uuid(), version: rowVersion });
