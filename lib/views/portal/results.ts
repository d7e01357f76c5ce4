import { loadStandings } from "@/lib/data/certificate/standing";
import { inSnapshot } from "@/lib/data/in-scope";
import { CertificateContent } from "@/lib/domain/certificate/content";
import { hasEnded } from "@/lib/domain/certificate/standing";
import { resultRows } from "@/lib/domain/history/results-table";
import { Refused } from "@/lib/domain/refusal";
import { type Actor, scopeOf } from "@/lib/domain/staff/actor";
import { may } from "@/lib/domain/staff/permissions";
import { found } from "../view";

const batchSize = 100;

/**
 * The results of one order of the customer, or of all of theirs, a hundred certificates at a time: however many there
 * are, only those are in memory.
 */
export async function* portalResults(
  actor: Actor,
  orderNumber: string | null,
): AsyncGenerator<readonly (readonly string[])[]> {
  if (actor.kind !== "customer" || !may(actor.roles, "portal.read"))
    throw new Refused({ code: "not-permitted", message: "Your roles do not allow this." });
  const scope = scopeOf(actor);
  const orderId =
    orderNumber === null
      ? undefined
      : await inSnapshot(scope, async (tx) =>
          found(await tx.order.findUnique({ where: { number: orderNumber }, select: { id: true } })),
        ).then(({ id }) => id);
  let after = "";
  for (;;) {
    const { rows, standings } = await inSnapshot(scope, async (tx) => {
      const some = await tx.certificate.findMany({
        where: { number: { gt: after }, ...(orderId ? { orderId } : {}) },
        select: { id: true, number: true, content: true },
        orderBy: { number: "asc" },
        take: batchSize,
      });
      const ids = some.map(({ id }) => id);
      return { rows: some, standings: await loadStandings(tx, ids) };
    });
    // Results that are not to be used stand in no table; those that took their place do.
    yield rows.flatMap(({ content, id }) =>
      hasEnded(standings.get(id) ?? { kind: "valid" })
        ? []
        : resultRows(CertificateContent.parse(JSON.parse(content))),
    );
    if (rows.length < batchSize) return;
    after = rows.at(-1)?.number ?? "";
  }
}
