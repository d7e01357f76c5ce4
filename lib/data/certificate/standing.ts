import type { Standing } from "@/lib/domain/certificate/standing";
import type { Tx } from "../in-scope";

/**
 * What became of these certificates, by their ids; as far as this scope sees them. Told by rows that came later, never
 * by the certificate itself.
 */
export const loadStandings = async (
  tx: Tx,
  ids: readonly string[],
): Promise<ReadonlyMap<string, Standing>> => {
  const endings = await tx.certificateEnding.findMany({ where: { certificateId: { in: [...ids] } } });
  const files = await tx.certificateFile.findMany({
    where: { certificateId: { in: [...ids] } },
    select: { certificateId: true },
  });
  const successors = await tx.certificate.findMany({
    where: { id: { in: endings.flatMap(({ successorId }) => successorId ?? []) } },
    select: { id: true, number: true, token: true },
  });
  const successorOf = new Map(successors.map((one) => [one.id, one]));
  const made = new Set(files.map(({ certificateId }) => certificateId));
  const ended = new Map(endings.map((row) => [row.certificateId, row]));
  return new Map(
    ids.map((id): [string, Standing] => {
      const ending = ended.get(id);
      if (!ending) return [id, { kind: made.has(id) ? "valid" : "pending" }];
      const told = { reason: ending.reason, at: ending.decidedAt.toISOString() };
      if (ending.kind === "withdrawn") return [id, { kind: "withdrawn", ...told }];
      const kind = ending.kind === "amended" ? "amended" : "replaced";
      const next = successorOf.get(ending.successorId ?? "");
      const successor = next ? { successor: next.number, successorToken: next.token } : { successor: "" };
      return [id, { kind, ...successor, ...told }];
    }),
  );
};

export const loadStanding = async (tx: Tx, id: string): Promise<Standing> =>
  (await loadStandings(tx, [id])).get(id) ?? { kind: "valid" };
