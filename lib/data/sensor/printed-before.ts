import type { Tx } from "../in-scope";

/** Those of these sensors whose label was printed before, as the audit log says. */
export const printedBefore = async (tx: Tx, sensorIds: readonly string[]): Promise<ReadonlySet<string>> => {
  const printed = await tx.auditEvent.findMany({
    where: { entityKind: "sensor", entityId: { in: [...sensorIds] }, action: "sensor.label-printed" },
    select: { entityId: true },
    distinct: ["entityId"],
  });
  return new Set(printed.map(({ entityId }) => entityId));
};
