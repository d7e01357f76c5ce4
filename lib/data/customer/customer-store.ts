import type { Tx } from "@/lib/data/in-scope";
import { isUuid } from "@/lib/data/is-uuid";
import { refuseDuplicate } from "@/lib/data/refuse-duplicate";
import { demandSaved } from "@/lib/data/versioned";

type CustomerFields = {
  readonly name: string;
  readonly addressLines: string;
  readonly contactName: string;
  readonly email: string;
};

const nameTaken = "There is a customer of this name already.";

export const insertCustomer = (tx: Tx, fields: CustomerFields) =>
  refuseDuplicate(tx.customer.create({ data: fields }), "name", nameTaken);

export const saveCustomer = async (
  tx: Tx,
  id: string,
  version: number,
  fields: CustomerFields,
): Promise<void> => {
  const save = tx.customer.updateMany({
    where: { id, version },
    data: { ...fields, version: { increment: 1 } },
  });
  demandSaved(await refuseDuplicate(save, "name", nameTaken));
};

export const loadCustomer = (tx: Tx, id: string) =>
  isUuid(id) ? tx.customer.findUnique({ where: { id } }) : null;

export const loadCustomers = (tx: Tx) =>
  tx.customer.findMany({
    orderBy: { name: "asc" },
    include: { _count: { select: { orders: true, people: true } } },
  });
