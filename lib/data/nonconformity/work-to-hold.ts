import type { SubjectKind } from "@/lib/domain/nonconformity/labels";
import { loadRunsOn } from "../equipment/runs-on";
import type { Tx } from "../in-scope";

const runsOn = async (tx: Tx, kind: SubjectKind, id: string): Promise<readonly string[]> => {
  if (kind === "run") return [id];
  if (kind === "certificate")
    return (await tx.certificate.findMany({ where: { id }, select: { runId: true } })).map(
      ({ runId }) => runId,
    );
  const equipmentId =
    kind === "calibration"
      ? (await tx.calibration.findUniqueOrThrow({ where: { id }, select: { equipmentId: true } })).equipmentId
      : id;
  const numbers = (await loadRunsOn(tx, equipmentId, null)).map(({ number }) => number);
  const runs = await tx.run.findMany({ where: { number: { in: numbers } }, select: { id: true } });
  return runs.map((run) => run.id);
};

/** The sensors whose certificate is not issued yet and that stand on the subject: they can still be stopped. */
export const loadWorkToHold = async (
  tx: Tx,
  subject: { readonly kind: SubjectKind; readonly id: string | null },
) => {
  const { kind, id } = subject;
  if (id === null || kind === "laboratory") return [];
  const select = {
    id: true,
    tag: true,
    customerId: true,
    line: { select: { orderId: true, order: { select: { number: true } } } },
  } as const;
  const unissued = { state: { notIn: ["issued", "collected"] } };
  if (kind === "sensor" || kind === "order" || kind === "customer")
    return tx.sensor.findMany({
      where: {
        ...unissued,
        ...{ sensor: { id }, order: { line: { orderId: id } }, customer: { customerId: id } }[kind],
      },
      select,
      orderBy: { tag: "asc" },
    });
  const places = await tx.loadPlace.findMany({
    where: { runId: { in: [...(await runsOn(tx, kind, id))] }, sensorId: { not: null } },
    select: { sensorId: true },
  });
  const ids = places.flatMap(({ sensorId }) => sensorId ?? []);
  return tx.sensor.findMany({ where: { ...unissued, id: { in: ids } }, select, orderBy: { tag: "asc" } });
};
