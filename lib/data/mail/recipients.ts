import type { Tx } from "../in-scope";

/** Who is written to, about what: decided here and nowhere else. */
export type Recipient = { readonly personId: string | null; readonly name: string; readonly email: string };

const named = { id: true, name: true, email: true } as const;
const recipientOf = ({ id, name, email }: { id: string; name: string; email: string }): Recipient => ({
  personId: id,
  name,
  email,
});

const people = async (tx: Tx, customerId: string | null, role: string): Promise<readonly Recipient[]> => {
  const rows = await tx.person.findMany({
    where: { customerId, active: true, roles: { some: { role } } },
    select: named,
    orderBy: { email: "asc" },
  });
  return rows.map(recipientOf);
};

const onRecord = async (tx: Tx, customerId: string): Promise<Recipient> => {
  const { contactName, email } = await tx.customer.findUniqueOrThrow({ where: { id: customerId } });
  return { personId: null, name: contactName, email };
};

/** News of an order: whoever of the customer may order, or, where nobody has an account, the address on record. */
export const customerRecipients = async (tx: Tx, customerId: string): Promise<readonly Recipient[]> => {
  const orderers = await people(tx, customerId, "customer-orderer");
  return orderers.length > 0 ? orderers : [await onRecord(tx, customerId)];
};

/**
 * A letter to whoever asked: these people first, as far as they are the customer's own and have an account, and the
 * address on record, unless it is the same mailbox.
 */
export const askerRecipients = async (
  tx: Tx,
  customerId: string,
  personIds: readonly string[],
): Promise<readonly Recipient[]> => {
  const askers = await tx.person.findMany({
    where: { id: { in: [...personIds] }, customerId, active: true },
    select: named,
    orderBy: { email: "asc" },
  });
  const record = await onRecord(tx, customerId);
  const isTheirs = askers.some(({ email }) => email.toLowerCase() === record.email.toLowerCase());
  return [...askers.map(recipientOf), ...(isTheirs ? [] : [record])];
};

/** A letter about orders: whoever asked for the work, in the portal or by a program of theirs, and the address on record. */
export const orderRecipients = async (
  tx: Tx,
  customerId: string,
  orderNumbers: readonly string[],
): Promise<readonly Recipient[]> => {
  const orders = await tx.order.findMany({
    where: { number: { in: [...orderNumbers] }, customerId },
    select: { recordedById: true },
  });
  return askerRecipients(
    tx,
    customerId,
    orders.map(({ recordedById }) => recordedById),
  );
};

export const deskRecipients = (tx: Tx): Promise<readonly Recipient[]> => people(tx, null, "front-desk");
