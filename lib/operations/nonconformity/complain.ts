import { askerRecipients, type Recipient } from "@/lib/data/mail/recipients";
import { writeEach } from "@/lib/data/mail/write-each";
import { findSubject } from "@/lib/data/nonconformity/find-subject";
import { insertNonconformity } from "@/lib/data/nonconformity/insert-nonconformity";
import { complaintReceivedLetter } from "@/lib/domain/mail/letters/complaint";
import { ComplainInput } from "@/lib/domain/nonconformity/schema";
import { Refused } from "@/lib/domain/refusal";
import { demandOwn } from "@/lib/domain/staff/demand-own";
import { personIdOf } from "@/lib/domain/staff/person-id-of";
import { defineOperation } from "../operation";

/** A customer complains in the portal, of something of their own; that it came is told to them at once (7.9.5). */
export const complain = defineOperation({
  name: "nonconformity/complain",
  permission: "portal.order",
  scope: "laboratory",
  input: ComplainInput,
  perform: async ({ actor, now, tx }, { publicUrl, subjectName, ...input }) => {
    const subject = await findSubject(tx, input.subjectKind, subjectName);
    if (!subject || actor.kind !== "customer" || subject.customerId !== actor.customerId)
      throw new Refused({
        code: "invalid",
        message: "This is none of yours. Nothing was stored; what you typed is still here.",
        fields: { subjectName: "Write the number of an order, sensor or certificate of yours." },
      });
    const customerId = demandOwn(actor, subject.customerId);
    const by = { openedById: personIdOf(actor), openedAt: now };
    const opened = await insertNonconformity(tx, { kind: "complaint", ...input, subject, ...by });
    const laboratory = await tx.laboratory.findFirst({ select: { name: true } });
    const compose = ({ name }: Recipient) =>
      complaintReceivedLetter({
        laboratory: laboratory?.name ?? "The laboratory",
        contactName: name,
        number: opened.number,
        link: new URL("/portal", publicUrl).href,
      });
    const recipients = await askerRecipients(tx, customerId, [by.openedById]);
    await writeEach(tx, recipients, "complaint", compose, publicUrl, now);
    return { value: { number: opened.number }, events: [opened.event] };
  },
});
