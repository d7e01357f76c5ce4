import type { Tx } from "../in-scope";
import { sha256 } from "../sha256";

type NewIntakeFile = {
  readonly orderId: string;
  readonly customerId: string;
  readonly fileName: string;
  readonly bytes: Uint8Array;
  readonly rows: number;
  readonly receivedById: string;
  readonly receivedAt: Date;
};

/** Keeps the list sensors were taken in from, as it came. */
export const insertIntakeFile = async (tx: Tx, file: NewIntakeFile): Promise<{ readonly id: string }> => {
  const bytes = Uint8Array.from(file.bytes);
  return tx.intakeFile.create({ data: { ...file, bytes, sha256: sha256(bytes) }, select: { id: true } });
};
