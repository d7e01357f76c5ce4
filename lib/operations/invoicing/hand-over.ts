import { z } from "zod";
import { hex } from "@/lib/data/hex";
import { insertInvoicingFile } from "@/lib/data/invoicing/invoicing-store";
import { loadChargeable } from "@/lib/data/invoicing/load-chargeable";
import { nextNumber } from "@/lib/data/number/next-number";
import { loadCurrency } from "@/lib/data/price/price-store";
import { lockName } from "@/lib/data/sql/lock-name";
import { eventOf } from "@/lib/domain/audit/define-event";
import { isoDay } from "@/lib/domain/calibration/due";
import { composeInvoicingRows } from "@/lib/domain/invoicing/compose-file";
import { csvBytes } from "@/lib/domain/invoicing/csv";
import { invoicingEvents } from "@/lib/domain/invoicing/events";
import { Refused } from "@/lib/domain/refusal";
import { personIdOf } from "@/lib/domain/staff/person-id-of";
import { defineOperation } from "../operation";

/** All that is finished and was not handed over yet, as one file. */
export const handOverToInvoicing = defineOperation({
  name: "invoicing/hand-over",
  permission: "invoicing.record",
  input: z.strictObject({}),
  perform: async ({ actor, now, tx }) => {
    await lockName(tx, "invoicing");
    const found = await loadChargeable(tx, now);
    const charges = found.flatMap((order) => order.charges);
    if (charges.length === 0)
      throw new Refused({
        code: "wrong-state",
        message: "Nothing finished waits to be invoiced, or it has no price yet. No file was made.",
      });
    const currency = await loadCurrency(tx);
    const year = now.getUTCFullYear();
    const number = `I-${year}-${String(await nextNumber(tx, `invoicing-${year}`)).padStart(4, "0")}`;
    const bytes = csvBytes(composeInvoicingRows({ number, on: isoDay(now), currency }, found));
    const made = { madeById: personIdOf(actor), madeAt: now };
    const { id, digest } = await insertInvoicingFile(tx, { number, bytes, charges, ...made });
    const totalAmount = charges.reduce((sum, { amount }) => sum + amount, 0);
    const payload = {
      number,
      rows: charges.length,
      orders: found.length,
      totalAmount,
      currency,
      sha256: hex(digest),
    };
    return { value: { id, number }, events: [eventOf(invoicingEvents.handedOver, id, payload)] };
  },
});
