import type { Tx } from "@/lib/data/in-scope";
import { sha256 } from "@/lib/data/sha256";

type Incoming = {
  readonly bytes: Uint8Array;
  readonly mediaType: string;
  readonly fileName: string;
  readonly receivedById: string;
  readonly receivedAt: Date;
};

/** A file as it came, by its hash: the same bytes are kept once, however often they arrive. Returns the document's id. */
export const keepDocument = async (tx: Tx, { bytes, ...incoming }: Incoming): Promise<string> => {
  const digest = sha256(bytes);
  const there = await tx.evidenceDocument.findUnique({ where: { sha256: digest }, select: { id: true } });
  if (there) return there.id;
  const made = await tx.evidenceDocument.create({
    data: { ...incoming, bytes: new Uint8Array(bytes), sha256: digest },
    select: { id: true },
  });
  return made.id;
};
