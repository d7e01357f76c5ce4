import { saveSeen } from "@/lib/data/account/session-store";
import { inScope } from "@/lib/data/in-scope";
import { seenEveryMilliseconds } from "@/lib/domain/account/session";

/** That a session was used: a mark for its owner and for the idle timeout, no fact, and so no event. Once a minute. */
export const markSeen = async (sessionId: string, lastSeenAt: Date, now: Date): Promise<void> => {
  const notSince = new Date(now.getTime() - seenEveryMilliseconds);
  if (lastSeenAt >= notSince) return;
  await inScope({ kind: "laboratory" }, (tx) => saveSeen(tx, sessionId, now, notSince));
};
