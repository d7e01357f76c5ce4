import { z } from "zod";
import { printedText } from "../certificate/printable/printed-text";
import { emailAddress, requiredLine, requiredLines, rowVersion } from "../typed-text";

export const CustomerInput = z.strictObject({
  name: requiredLine("Write the customer's name as it stands on certificates.", 160).superRefine(printedText),
  addressLines: requiredLines("Write the postal address, one line each.", 400).superRefine(printedText),
  contactName: requiredLine("Write whom the laboratory writes to.", 120).superRefine(printedText),
  email: emailAddress,
});

export const CustomerChange = CustomerInput.extend({ id: z.uuid(), version: rowVersion });
