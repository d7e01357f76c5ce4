import type { Tx } from "../in-scope";

export type Recipient = { readonly personId: string | null; readonly name: string; readonly email: string };

const people = async (tx: Tx, customerId: string | null, role: string): Promise<readonly Recipient[]> => {
  const rows = await tx.person.findMany({
    where: { customerId, active: true, roles: { some: { role } } },
    select: { id: true, name: true, email: true },
    orderBy: { email: "asc" },
  });
  return rows.map(({ id, name, email }) => ({ personId: id, name, email }));
};

/** Who of a customer is written to: whoever may order, or, where nobody has an account, the address on record. */
export const customerRecipients = async (tx: Tx, customerId: string): Promise<readonly Recipient[]> => {
  const orderers = await people(tx, customerId, "customer-orderer");
  if (orderers.length > 0) return orderers;
  const { contactName, email } = await tx.customer.findUniqueOrThrow({ where: { id: customerId } });
  return [{ personId: null, name: contactName, email }];
};

export const deskRecipients = (tx: Tx): Promise<readonly Recipient[]> => people(tx, null, "front-desk");
