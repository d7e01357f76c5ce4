import { z } from "zod";
import { inScope } from "@/lib/data/in-scope";
import { loadToken } from "@/lib/data/machine/token-store";
import { nextNumber } from "@/lib/data/number/next-number";
import { insertOrder } from "@/lib/data/order/write-order";
import { lockName } from "@/lib/data/sql/lock-name";
import { eventOf } from "@/lib/domain/audit/define-event";
import { type Program, programActor } from "@/lib/domain/machine/program";
import { WorkRequest } from "@/lib/domain/machine/wire/work-request";
import { orderEvents } from "@/lib/domain/order/events";
import { RecordOrderInput } from "@/lib/domain/order/schema";
import { Refused } from "@/lib/domain/refusal";
import { type Clock, execute } from "../execute";
import { defineOperation } from "../operation";

const RequestKey = z
  .string()
  .trim()
  .regex(/^[\x21-\x7e]{8,100}$/, "8 to 100 characters without spaces, e.g. a UUID.");

/** The same judgement as at the desk's own form: what that refuses, a program is refused as well. */
const draftOf = (customerId: string, request: z.output<typeof WorkRequest>) =>
  RecordOrderInput.safeParse({
    customerId,
    purchaseOrder: request.purchaseOrder,
    note: request.note,
    lines: request.lines.map(({ setpoints, ...line }) => ({ ...line, setpoints: setpoints.join(", ") })),
  });

const requestWork = defineOperation({
  name: "machine/request-work",
  permission: "system",
  input: z.strictObject({ tokenId: z.uuid(), requestKey: RequestKey, request: WorkRequest }),
  perform: async ({ now, tx }, { tokenId, requestKey, request }) => {
    const token = await loadToken(tx, tokenId);
    if (!token?.customerId)
      throw new Refused({ code: "not-permitted", message: "Work is requested with a customer's token." });
    const { customerId, madeById } = token;
    const draft = draftOf(customerId, request);
    if (!draft.success)
      throw new Refused({
        code: "invalid",
        message: "The request does not hold. Nothing was stored.",
        fields: Object.fromEntries(draft.error.issues.map(({ path, message }) => [path.join("."), message])),
      });
    const year = now.getUTCFullYear();
    const number = `O-${year}-${String(await nextNumber(tx, `order-${year}`)).padStart(4, "0")}`;
    const orderId = await insertOrder(tx, {
      ...{ number, customerId, draft: draft.data, recordedById: madeById, recordedAt: now },
      came: { state: "requested", origin: "interface", requestKey },
    });
    const { lines } = draft.data;
    const event = eventOf(orderEvents.requested, orderId, {
      ...{ number, customerId, origin: "interface" as const, lines: lines.length },
      quantity: lines.reduce((sum, line) => sum + line.quantity, 0),
    });
    return { value: { number }, events: [event] };
  },
});

const asked = (customerId: string, requestKey: string) =>
  inScope({ kind: "laboratory" }, async (tx) => {
    await lockName(tx, `request ${customerId} ${requestKey}`);
    return tx.order.findUnique({
      where: { customerId_requestKey: { customerId, requestKey } },
      select: { number: true },
    });
  });

/** Requests work once for each key, however often and at how many connections it is sent. */
export const requestWorkOnce = async (
  program: Program,
  requestKey: string | null,
  request: unknown,
  clock: Clock,
): Promise<{ readonly number: string; readonly isNew: boolean }> => {
  const { tokenId, customerId } = program;
  if (customerId === null)
    throw new Refused({ code: "not-permitted", message: "Work is requested with a customer's token." });
  const before = await asked(customerId, requestKey ?? "");
  if (before) return { number: before.number, isNew: false };
  try {
    const input = { tokenId, requestKey: requestKey ?? "", request: request as z.input<typeof WorkRequest> };
    const { number } = await execute(requestWork, programActor(program), input, clock);
    return { number, isNew: true };
  } catch (error) {
    // Sent twice at once, the second meets the first's row.
    const other = await asked(customerId, requestKey ?? "");
    if (other) return { number: other.number, isNew: false };
    throw error;
  }
};
