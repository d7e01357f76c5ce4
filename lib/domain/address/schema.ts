import { z } from "zod";
import { optionalLine, requiredLine, requiredLines, rowVersion } from "../typed-text";

export const addressKinds = ["delivery", "invoice", "site"] as const;
export type AddressKind = (typeof addressKinds)[number];

export const addressKindLabels: Readonly<Record<AddressKind, string>> = {
  delivery: "Where parcels go",
  invoice: "Where invoices go",
  site: "A works of yours",
};

export const AddressInput = z.strictObject({
  kind: z.enum(addressKinds, "Choose what the address is for."),
  title: requiredLine("Give it a short name, such as “Works 2, goods in”.", 80),
  addressLines: requiredLines("Write the postal address, one line each.", 400),
  contactName: optionalLine(120),
});

export const AddressChange = AddressInput.extend({ id: z.uuid(), version: rowVersion });
