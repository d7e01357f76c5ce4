import type { Tx } from "@/lib/data/in-scope";

/** The last one of this sign-in; whether it still runs is for the domain. */
export const loadSigningSession = (tx: Tx, personId: string, personSessionId: string) =>
  tx.signingSession.findFirst({
    where: { personId, personSessionId, endedAt: null },
    orderBy: [{ openedAt: "desc" }, { id: "desc" }],
  });

/** A new one, with its first signature; what this person had open before is over. */
export const openSigningSession = async (
  tx: Tx,
  of: { readonly personId: string; readonly personSessionId: string },
  now: Date,
): Promise<string> => {
  await tx.signingSession.updateMany({
    where: { personId: of.personId, endedAt: null },
    data: { endedAt: now },
  });
  const session = { ...of, openedAt: now, lastSignedAt: now };
  return (await tx.signingSession.create({ data: session, select: { id: true } })).id;
};

/** True where it has not ended meanwhile. */
export const continueSigningSession = async (tx: Tx, id: string, now: Date): Promise<boolean> =>
  (
    await tx.signingSession.updateMany({
      where: { id, endedAt: null },
      data: { lastSignedAt: now },
    })
  ).count === 1;
