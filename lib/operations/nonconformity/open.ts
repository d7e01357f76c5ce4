import { findSubject } from "@/lib/data/nonconformity/find-subject";
import { insertNonconformity } from "@/lib/data/nonconformity/insert-nonconformity";
import { OpenInput } from "@/lib/domain/nonconformity/schema";
import { Refused } from "@/lib/domain/refusal";
import { personIdOf } from "@/lib/domain/staff/person-id-of";
import { defineOperation } from "../operation";

/** Nonconforming work, or a complaint that came by telephone or mail, opened from where it was found. */
export const openNonconformity = defineOperation({
  name: "nonconformity/open",
  permission: "nonconformity.open",
  input: OpenInput,
  perform: async ({ actor, now, tx }, input) => {
    const subject = await findSubject(tx, input.subjectKind, input.subjectName);
    if (!subject)
      throw new Refused({
        code: "invalid",
        message: "There is no such thing. Nothing was stored; what you typed is still here.",
        fields: { subjectName: "Write its number or tag as it stands on its page." },
      });
    if (input.kind === "complaint" && subject.customerId === null)
      throw new Refused({
        code: "invalid",
        message: "A complaint is somebody's. Nothing was stored; what you typed is still here.",
        fields: { subjectKind: "Choose the order, sensor or certificate the customer complains of." },
      });
    const { kind, title, description, subjectKind } = input;
    const by = { openedById: personIdOf(actor), openedAt: now };
    const opened = await insertNonconformity(tx, { kind, title, description, subjectKind, subject, ...by });
    return { value: { number: opened.number }, events: [opened.event] };
  },
});
