import type { Standing } from "@/lib/domain/certificate/standing";
import type { Tx } from "../in-scope";
import { type CertificateEndingRow, certificateEndings } from "../sql/certificate-endings";

const standingOf = ({ hasFile, kind, ...row }: CertificateEndingRow): Standing => {
  if (kind === null) return { kind: hasFile ? "valid" : "pending" };
  const told = {
    ...{ reason: row.reason ?? "", at: row.decidedAt?.toISOString() ?? "" },
    ...(hasFile ? {} : { isUnmade: true as const }),
  };
  if (kind === "withdrawn") return { kind, ...told };
  const token = row.successorToken === null ? {} : { successorToken: row.successorToken };
  const successor = { successor: row.successor ?? "", ...token };
  return { kind: kind === "amended" ? "amended" : "replaced", ...successor, ...told };
};

/**
 * What became of these certificates, by their ids; as far as this scope sees them. Told by rows that came later, never
 * by the certificate itself.
 */
export const loadStandings = async (tx: Tx, ids: readonly string[]): Promise<ReadonlyMap<string, Standing>> =>
  new Map((await certificateEndings(tx, ids)).map((row) => [row.id, standingOf(row)]));

export const loadStanding = async (tx: Tx, id: string): Promise<Standing> =>
  (await loadStandings(tx, [id])).get(id) ?? { kind: "valid" };
