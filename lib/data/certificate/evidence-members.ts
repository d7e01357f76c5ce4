import type { SetKind } from "@/lib/domain/parts/decide-set";
import type { Tx } from "../in-scope";
import type { EvidenceMember } from "./load-evidence-file";

const tagsOf = async (tx: Tx, sensorIds: readonly string[]): Promise<ReadonlyMap<string, string>> => {
  const sensors = await tx.sensor.findMany({
    where: { id: { in: [...sensorIds] } },
    select: { id: true, tag: true },
  });
  return new Map(sensors.map(({ id, tag }) => [id, tag]));
};

/** What a certificate speaks of, in its order: its parts, or its own sensor and evaluation alone. */
export const evidenceMembers = async (
  tx: Tx,
  certificate: { readonly id: string; readonly sensorId: string; readonly evaluationId: string },
): Promise<readonly EvidenceMember[]> => {
  const parts = await tx.certificatePart.findMany({
    where: { certificateId: certificate.id },
    orderBy: { position: "asc" },
  });
  const members =
    parts.length > 0
      ? parts.map(({ sensorId, setKind, evaluationId }) => ({
          sensorId,
          kind: setKind as SetKind,
          evaluationId,
        }))
      : [
          {
            sensorId: certificate.sensorId,
            kind: "as-received" as const,
            evaluationId: certificate.evaluationId,
          },
        ];
  const tags = await tagsOf(
    tx,
    members.map(({ sensorId }) => sensorId),
  );
  return members.map(({ sensorId, ...member }) => ({ tag: tags.get(sensorId) ?? "", ...member }));
};
