import { inScope } from "@/lib/data/in-scope";
import type { Clock } from "../execute";
import { pdf, renderDocument } from "./render";

/**
 * Documents of signed certificates that are not stored yet: after a sign-off, and before a download. A failure
 * leaves that one pending, with its number, and is named; the others go on.
 */
export const renderPending = async (
  clock: Clock,
  onlyTokens?: readonly string[],
): Promise<readonly { readonly number: string; readonly error: unknown }[]> => {
  const pending = await inScope({ kind: "laboratory" }, (tx) =>
    tx.certificate.findMany({
      where: {
        files: { none: { mediaType: pdf } },
        ...(onlyTokens ? { token: { in: [...onlyTokens] } } : {}),
      },
      select: { id: true, number: true },
      orderBy: { number: "asc" },
    }),
  );
  const failed: { number: string; error: unknown }[] = [];
  for (const { id, number } of pending)
    await renderDocument(id, clock).catch((error: unknown) => failed.push({ number, error }));
  return failed;
};
