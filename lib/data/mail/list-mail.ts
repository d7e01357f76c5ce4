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

/** The messages that were kept, the newest first, with their attempts in order. */
export const listMail = async (tx: Tx, limit: number): Promise<readonly ListedMail[]> =>
  (await tx.mailMessage.findMany({
    orderBy: [{ enqueuedAt: "desc" }, { id: "asc" }],
    take: limit,
    select: {
      ...{ id: true, kind: true, recipient: true, subject: true, body: true, messageId: true },
      enqueuedAt: true,
      attempts: {
        orderBy: { id: "asc" },
        select: { outcome: true, transport: true, detail: true, happenedAt: true },
      },
    },
  })) as ListedMail[];
