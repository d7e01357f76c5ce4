import type { CustodyKind } from "@/lib/domain/custody/labels";
import type { Tx } from "../in-scope";

export type NewCustodyEvent = {
  /** All of them go the same way at the same moment. */
  readonly sensorIds: readonly string[];
  readonly kind: CustodyKind;
  readonly placeId?: string;
  readonly fromWhom?: string;
  readonly toWhom?: string;
  readonly condition?: string;
  readonly runId?: string;
  readonly shipmentId?: string;
  /** null: the platform itself. */
  readonly recordedById: string | null;
  readonly happenedAt: Date;
};

/** Adds a line to the custody log of each of these sensors; the last line says where a sensor is. */
export const insertCustodyEvent = async (tx: Tx, event: NewCustodyEvent): Promise<void> => {
  const { sensorIds, ...line } = event;
  const owners = await tx.sensor.findMany({
    where: { id: { in: [...sensorIds] } },
    select: { id: true, customerId: true },
    orderBy: { tag: "asc" },
  });
  await tx.custodyEvent.createMany({
    data: owners.map(({ id, customerId }) => ({ ...line, sensorId: id, customerId })),
  });
};
