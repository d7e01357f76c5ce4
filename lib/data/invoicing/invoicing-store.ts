import type { Tx } from "@/lib/data/in-scope";
import { isUuid } from "@/lib/data/is-uuid";
import { sha256 } from "@/lib/data/sha256";
import type { Charge } from "@/lib/domain/invoicing/charges";

type NewFile = {
  readonly number: string;
  readonly bytes: Uint8Array;
  readonly charges: readonly Charge[];
  readonly madeById: string;
  readonly madeAt: Date;
};

/** The file with a row for each thing in it: handed over once, the database sees to it. */
export const insertInvoicingFile = async (tx: Tx, { charges, bytes, ...file }: NewFile) => {
  const digest = sha256(bytes);
  const { id } = await tx.invoicingFile.create({
    data: { ...file, bytes: Uint8Array.from(bytes), sha256: digest, rows: charges.length },
    select: { id: true },
  });
  await tx.invoicingRow.createMany({
    data: charges.map(({ orderId, sensorId, key, amount }) => ({
      ...{ invoicingFileId: id, orderId, sensorId, key, amount },
    })),
  });
  return { id, digest };
};

export const loadInvoicingFile = (tx: Tx, id: string) =>
  isUuid(id) ? tx.invoicingFile.findUnique({ where: { id } }) : null;

export const listInvoicingFiles = (tx: Tx, most: number) =>
  tx.invoicingFile.findMany({
    orderBy: [{ madeAt: "desc" }, { number: "desc" }],
    take: most,
    select: { id: true, number: true, rows: true, madeAt: true },
  });
