import type { Tx } from "@/lib/data/in-scope";

export type OutsideKey = { readonly issuer: string; readonly subject: string };

/** Whose account a provider's person is, or null. */
export const loadOutsidePerson = async (tx: Tx, key: OutsideKey) => {
  const row = await tx.outsideIdentity.findUnique({ where: { issuer_subject: key } });
  return row && tx.person.findUnique({ where: { id: row.personId } });
};

export const insertOutside = async (tx: Tx, personId: string, key: OutsideKey, now: Date): Promise<void> => {
  await tx.outsideIdentity.create({ data: { personId, ...key, linkedAt: now } });
};

/** How many links went. */
export const deleteOutsideOf = async (tx: Tx, personId: string): Promise<number> =>
  (await tx.outsideIdentity.deleteMany({ where: { personId } })).count;
