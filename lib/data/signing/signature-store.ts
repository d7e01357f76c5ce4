import type { Tx } from "@/lib/data/in-scope";
import type { SigningMeans } from "@/lib/domain/signing/decide-means";
import type { Meaning } from "@/lib/domain/signing/meaning";
import { lockName } from "../sql/lock-name";

type NewSignature = {
  readonly certificateId: string;
  readonly customerId: string;
  readonly personId: string;
  readonly printedName: string;
  readonly meaning: Meaning;
  /** Lower-case hex: of what was on the screen. */
  readonly reviewedHash: string;
  readonly contentHash: Uint8Array;
  readonly means: SigningMeans;
  readonly actId: string;
  readonly signingSessionId: string;
  readonly authorisationId: string;
  readonly signedAt: Date;
};

export const insertSignature = async (
  tx: Tx,
  { reviewedHash, contentHash, ...signature }: NewSignature,
): Promise<void> => {
  await tx.signature.create({
    data: {
      ...signature,
      reviewedHash: Uint8Array.from(Buffer.from(reviewedHash, "hex")),
      contentHash: Uint8Array.from(contentHash),
    },
  });
};

/** Whether this form was signed before; the lock makes two that come at once take turns, as the database's guard does. */
export const isActUsed = async (tx: Tx, actId: string): Promise<boolean> => {
  await lockName(tx, `signing-act ${actId}`);
  return (await tx.signature.count({ where: { actId } })) > 0;
};
