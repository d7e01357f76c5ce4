import type { AmendmentKind, Corrections } from "@/lib/domain/amendment/amendment";
import type { Tx } from "../in-scope";
import { lockName } from "../sql/lock-name";

/** Asking, dropping, signing and withdrawing take turns, certificate by certificate. */
export const lockCertificate = (tx: Tx, certificateId: string): Promise<number> =>
  lockName(tx, `certificate ${certificateId}`);

/** What is asked for and not decided; at most one. */
export const loadOpenAmendment = (tx: Tx, certificateId: string) =>
  tx.amendment.findFirst({ where: { certificateId, decision: null } });

export const loadAmendment = (tx: Tx, id: string) =>
  tx.amendment.findUnique({ where: { id }, include: { decision: true } });

export type OpenAmendment = NonNullable<Awaited<ReturnType<typeof loadOpenAmendment>>>;

type NewAmendment = {
  readonly certificateId: string;
  readonly customerId: string;
  readonly kind: AmendmentKind;
  readonly reason: string;
  readonly corrections: Corrections;
  readonly nonconformityId: string | null;
  readonly askedById: string;
  readonly askedAt: Date;
};

export const insertAmendment = async (
  tx: Tx,
  { corrections, ...amendment }: NewAmendment,
): Promise<string> => {
  const row = await tx.amendment.create({
    data: { ...amendment, corrections: JSON.stringify(corrections) },
    select: { id: true },
  });
  return row.id;
};

export const insertAmendmentDecision = async (
  tx: Tx,
  decision: {
    readonly amendmentId: string;
    readonly customerId: string;
    readonly outcome: "signed-off" | "dropped";
    readonly reason: string;
    readonly decidedById: string;
    readonly decidedAt: Date;
  },
): Promise<void> => {
  await tx.amendmentDecision.create({ data: decision });
};
