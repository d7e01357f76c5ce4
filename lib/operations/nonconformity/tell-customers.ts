import type { Tx } from "@/lib/data/in-scope";
import { askerRecipients, orderRecipients, type Recipient } from "@/lib/data/mail/recipients";
import { writeEach } from "@/lib/data/mail/write-each";
import { enter } from "@/lib/data/nonconformity/enter";
import { demandStory, type LoadedStory } from "@/lib/data/nonconformity/load-story";
import { complaintAnsweredLetter } from "@/lib/domain/mail/letters/complaint";
import { nonconformityLetter } from "@/lib/domain/mail/letters/nonconformity";
import { readFigures } from "@/lib/domain/nonconformity/figures";
import { TellInput } from "@/lib/domain/nonconformity/schema";
import { whomToTell } from "@/lib/domain/nonconformity/whom-to-tell";
import { Refused } from "@/lib/domain/refusal";
import { personIdOf } from "@/lib/domain/staff/person-id-of";
import { defineOperation } from "../operation";

const concerned = async (tx: Tx, { row, openHolds }: LoadedStory) => {
  if (row.kind === "complaint" && row.customerId) return [{ customerId: row.customerId, orders: [] }];
  const effect = row.entries.findLast(({ kind }) => kind === "effect");
  const orders = await tx.order.findMany({
    where: { id: { in: openHolds.map(({ orderId }) => orderId) } },
    select: { number: true, customerId: true },
  });
  return whomToTell(
    effect ? readFigures(effect.figures) : null,
    orders.map(({ number, customerId }) => ({ customerId, orderNumber: number })),
  );
};

/** Tells each customer concerned, in plain words, once (7.10.1 e); of a complaint, answers it (7.9.6). */
export const tellCustomers = defineOperation({
  name: "nonconformity/tell-customers",
  permission: "nonconformity.decide",
  input: TellInput,
  perform: async ({ actor, now, tx }, { number, version, text, publicUrl }) => {
    const loaded = await demandStory(tx, number, version);
    const told = await concerned(tx, loaded);
    if (told.length === 0)
      throw new Refused({
        code: "rule",
        message: "Nobody is concerned: state the effect on results first. Nothing was sent.",
      });
    const laboratory = (await tx.laboratory.findFirst({ select: { name: true } }))?.name ?? "The laboratory";
    const isComplaint = loaded.row.kind === "complaint";
    const link = new URL("/portal", publicUrl).href;
    for (const { customerId, orders } of told) {
      const { openedById } = loaded.row;
      const recipients = isComplaint
        ? await askerRecipients(tx, customerId, openedById === null ? [] : [openedById])
        : await orderRecipients(tx, customerId, orders);
      const compose = ({ name: contactName }: Recipient) =>
        isComplaint
          ? complaintAnsweredLetter({ laboratory, contactName, number, link })
          : nonconformityLetter({ laboratory, contactName, orders, text, link });
      await writeEach(tx, recipients, isComplaint ? "complaint" : "nonconformity", compose, publicUrl, now);
    }
    const figures = { told: told.map((one) => ({ customerId: one.customerId, orders: [...one.orders] })) };
    const said = { saidById: personIdOf(actor), saidAt: now };
    const event = await enter(tx, loaded, { kind: "customer-told", text, figures, ...said });
    return { value: { number, told: told.length }, events: [event] };
  },
});
