import { inSnapshot } from "@/lib/data/in-scope";
import { loadOpenFirstAccess } from "@/lib/data/staff/first-access-store";

/** Whether a one-time link still opens. Whoever asks has no actor yet; the answer is one bit about their own link. */
export const isFirstAccessOpenView = async (token: string, now: Date): Promise<boolean> =>
  (await inSnapshot({ kind: "laboratory" }, (tx) => loadOpenFirstAccess(tx, token, now))) !== null;
