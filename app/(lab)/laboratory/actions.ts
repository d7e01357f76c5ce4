"use server";
import { uploadedFile } from "@/app/(lab)/furnaces/survey-file";
import { configureLaboratory } from "@/lib/operations/laboratory/configure";
import { setMark } from "@/lib/operations/laboratory/set-mark";
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

/** A file is read before the form is; without one the mark is taken off only where that was asked for. */
export const setMarkAction = async (state: FormState, data: FormData) => {
  const mark = await uploadedFile(data, "mark");
  const isRemoval = text(data, "step") === "remove";
  const set = formAction(setMark, {
    parse: (form) => ({
      version: number(form, "version"),
      mark: isRemoval ? null : (mark ?? { bytes: new Uint8Array(), fileName: "" }),
    }),
    done: () => (isRemoval ? "The mark is taken off certificates to come." : "The mark is taken in."),
  });
  return set(state, data);
};

export const configureLaboratoryAction = async (state: FormState, data: FormData) => configure(state, data);
