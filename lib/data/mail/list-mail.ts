import type { Tx } from "@/lib/data/in-scope";
import type { MailKind, MailOutcome, MailTransportKind } from "@/lib/domain/mail/types";

export type ListedMail = {
  readonly id: string;
  readonly kind: MailKind;
  readonly recipient: string;
  readonly subject: string;
  readonly body: string;
  readonly messageId: string;
  readonly enqueuedAt: Date;
  readonly attempts: readonly {
    readonly outcome: MailOutcome;
    readonly transport: MailTransportKind;
    readonly detail: string;
    readonly happenedAt: Date;
  }[];
};

/** These messages, in this order, with their attempts in theirs. */
export const listMail = async (tx: Tx, ids: readonly string[]): Promise<readonly ListedMail[]> => {
  const found = (await tx.mailMessage.findMany({
    where: { id: { in: [...ids] } },
    select: {
      ...{ id: true, kind: true, recipient: true, subject: true, body: true, messageId: true },
      enqueuedAt: true,
      attempts: {
        orderBy: { id: "asc" },
        select: { outcome: true, transport: true, detail: true, happenedAt: true },
      },
    },
  })) as ListedMail[];
  const byId = new Map(found.map((message) => [message.id, message]));
  return ids.flatMap((id) => byId.get(id) ?? []);
};
