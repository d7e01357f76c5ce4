import type { AddressKind } from "@/lib/domain/address/schema";
import type { Tx } from "../in-scope";
import { isUuid } from "../is-uuid";
import { demandSaved } from "../versioned";

type AddressFields = {
  readonly kind: AddressKind;
  readonly title: string;
  readonly addressLines: string;
  readonly contactName: string;
};

const stored = <T extends { readonly kind: string }>(row: T) => ({ ...row, kind: row.kind as AddressKind });

export const insertAddress = async (tx: Tx, customerId: string, fields: AddressFields): Promise<string> =>
  (await tx.customerAddress.create({ data: { ...fields, customerId }, select: { id: true } })).id;

export const loadAddress = async (tx: Tx, id: string) => {
  const row = isUuid(id) ? await tx.customerAddress.findUnique({ where: { id } }) : null;
  return row && stored(row);
};

/** Those in use first. Row-level security shows a customer its own; the laboratory asks for one customer. */
export const loadAddresses = async (tx: Tx, customerId: string) =>
  (
    await tx.customerAddress.findMany({
      where: { customerId },
      orderBy: [{ active: "desc" }, { title: "asc" }, { id: "asc" }],
    })
  ).map(stored);

export const saveAddress = async (
  tx: Tx,
  id: string,
  version: number,
  fields: Partial<AddressFields> & { readonly active?: boolean },
): Promise<void> =>
  demandSaved(
    await tx.customerAddress.updateMany({
      where: { id, version },
      data: { ...fields, version: { increment: 1 } },
    }),
  );
