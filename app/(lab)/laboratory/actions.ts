"use server";
import { configureLaboratory } from "@/lib/operations/laboratory/configure";
import { formAction } from "@/lib/web/form-action";
import { flag, number, text } from "@/lib/web/form-fields";
import type { FormState } from "@/lib/web/form-state";

const configure = formAction(configureLaboratory, {
  parse: (data) => ({
    version: number(data, "version"),
    name: text(data, "name"),
    addressLines: text(data, "addressLines"),
    contact: text(data, "contact"),
    accreditationText: text(data, "accreditationText"),
    accreditationNumber: text(data, "accreditationNumber"),
    countryCode: text(data, "countryCode"),
    performerMaySignOff: flag(data, "performerMaySignOff"),
  }),
});

export const configureLaboratoryAction = async (state: FormState, data: FormData) => configure(state, data);
