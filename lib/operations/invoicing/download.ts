import { z } from "zod";
import { hex } from "@/lib/data/hex";
import { loadInvoicingFile } from "@/lib/data/invoicing/invoicing-store";
import { sha256 } from "@/lib/data/sha256";
import { eventOf } from "@/lib/domain/audit/define-event";
import { invoicingEvents } from "@/lib/domain/invoicing/events";
import { Refused } from "@/lib/domain/refusal";
import { defineOperation } from "../operation";

/** The stored bytes again, with who took them. */
export const downloadInvoicingFile = defineOperation({
  name: "invoicing/download",
  permission: "invoicing.record",
  input: z.strictObject({ id: z.string().max(100) }),
  perform: async ({ tx }, input) => {
    const file = await loadInvoicingFile(tx, input.id);
    if (!file) throw new Refused({ code: "not-found", message: "This file is not here." });
    const digest = hex(sha256(file.bytes));
    if (digest !== hex(file.sha256)) throw new Error(`the stored ${file.number} does not match its hash`);
    const { number, bytes } = file;
    return {
      value: { number, bytes },
      events: [eventOf(invoicingEvents.downloaded, file.id, { number, sha256: digest })],
    };
  },
});
