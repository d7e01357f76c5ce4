import type { NoteKind } from "@/lib/domain/order/note";
import type { Tx } from "../in-scope";

export type NewNote = {
  readonly orderId: string;
  readonly customerId: string;
  readonly kind: NoteKind;
  readonly text: string;
  readonly isForCustomer: boolean;
  readonly saidById: string | null;
  /** Of whoever has no account: who answered a link. */
  readonly saidByName?: string;
  readonly saidAt: Date;
};

export const insertOrderNote = async (tx: Tx, note: NewNote): Promise<void> => {
  await tx.orderNote.create({ data: { saidByName: "", ...note } });
};

export const loadOrderNotes = (tx: Tx, orderId: string) =>
  tx.orderNote.findMany({ where: { orderId }, orderBy: { id: "asc" } });
