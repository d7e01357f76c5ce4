import type { Tx } from "@/lib/data/in-scope";

/** What was said, and who said it: the laboratory as a whole, or whoever it was of the customer's own people. */
export const saidOfOrder = async (tx: Tx, orderId: string) => {
  const notes = await tx.orderNote.findMany({ where: { orderId }, orderBy: { id: "asc" } });
  const ids = notes.flatMap(({ kind, saidById }) => (kind === "from-customer" && saidById ? [saidById] : []));
  const people = await tx.person.findMany({
    where: { id: { in: ids }, customerId: { not: null } },
    select: { id: true, name: true },
  });
  return notes.map(({ kind, text, saidAt, saidById, saidByName }) => {
    const name = people.find(({ id }) => id === saidById)?.name ?? saidByName;
    const theirs = name === "" ? "you" : `you, ${name}`;
    return { text, who: kind === "from-customer" ? theirs : "we", at: saidAt.toISOString() };
  });
};
