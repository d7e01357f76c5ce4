import { randomUUID } from "node:crypto";
import type { Tx } from "@/lib/data/in-scope";
import { insertMail } from "@/lib/data/mail/mail-store";

type Owner = { readonly id: string; readonly email: string };
type Letter = { readonly subject: string; readonly body: string };

/** What happened to an account is told to the address it belongs to. */
export const tellOwner = (
  tx: Tx,
  owner: Owner,
  letter: Letter,
  publicUrl: string,
  now: Date,
): Promise<void> => {
  const mail = { id: randomUUID(), kind: "account-notice", personId: owner.id, digestId: null } as const;
  return insertMail(tx, { ...mail, recipient: owner.email, ...letter }, publicUrl, now);
};
