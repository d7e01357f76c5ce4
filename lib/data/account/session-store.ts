import type { Tx } from "@/lib/data/in-scope";
import { isUuid } from "@/lib/data/is-uuid";

type NewSession = {
  readonly personId: string;
  readonly kind: "full" | "bench";
  readonly cameBy: "password" | "openid";
  readonly hadCode: boolean;
  readonly device: string;
  readonly startedAt: Date;
  readonly endsAt: Date;
};

export const insertSession = async (tx: Tx, session: NewSession): Promise<string> =>
  (
    await tx.personSession.create({
      data: { ...session, lastSeenAt: session.startedAt },
      select: { id: true },
    })
  ).id;

export const loadSession = (tx: Tx, id: string, personId: string) =>
  isUuid(id) ? tx.personSession.findFirst({ where: { id, personId } }) : Promise.resolve(null);

/** Not ended, and not over by its hour; whether it was left alone too long is for the domain. The last seen first. */
export const loadOpenSessions = (tx: Tx, personId: string, now: Date) =>
  tx.personSession.findMany({
    where: { personId, endedAt: null, endsAt: { gt: now } },
    orderBy: [{ lastSeenAt: "desc" }, { id: "asc" }],
    take: 100,
  });

/** Writes nothing where it was seen since `notSince`: two requests at once write once. */
export const saveSeen = async (tx: Tx, id: string, now: Date, notSince: Date): Promise<void> => {
  await tx.personSession.updateMany({
    where: { id, endedAt: null, lastSeenAt: { lt: notSince } },
    data: { lastSeenAt: now },
  });
};

/** True where it was this person's and open. */
export const endSession = async (tx: Tx, id: string, personId: string, now: Date): Promise<boolean> => {
  const ended = await tx.personSession.updateMany({
    where: { id, personId, endedAt: null },
    data: { endedAt: now },
  });
  return ended.count === 1;
};

/** Every session of a person, or every one but the one they are in. Answers how many ended. */
export const endSessionsOf = async (tx: Tx, personId: string, now: Date, but?: string): Promise<number> => {
  const others = but === undefined ? {} : { id: { not: but } };
  const ended = await tx.personSession.updateMany({
    where: { personId, endedAt: null, ...others },
    data: { endedAt: now },
  });
  return ended.count;
};
