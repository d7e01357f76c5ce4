import { loadAllCalibrations } from "@/lib/data/calibration/calibration-store";
import { loadAllEquipment } from "@/lib/data/equipment/equipment-store";
import type { Tx } from "@/lib/data/in-scope";
import { dueLabels, dueState } from "@/lib/domain/calibration/due";
import { calibrationInForce } from "@/lib/domain/calibration/in-force";
import type { Waiting } from "./waiting";

const shown = 6;

/** Signed off, numbered, and not rendered yet. */
export const certificatesPending = async (tx: Tx): Promise<Waiting> => {
  const where = { files: { none: {} } };
  const certificates = await tx.certificate.findMany({
    where,
    orderBy: { signedAt: "asc" },
    take: shown,
    select: { id: true, number: true },
  });
  return {
    count: await tx.certificate.count({ where }),
    items: certificates.map(({ id, number }) => ({
      key: id,
      label: number,
      detail: "signed off, its document is being made",
      href: `/certificates/${number}`,
      state: "pending",
    })),
  };
};

/** Out of date or due within 30 days; junctions and scanners only if they ever had a certificate. */
export const standardsDue = async (tx: Tx, today: string): Promise<Waiting> => {
  const calibrations = await loadAllCalibrations(tx);
  const due = (await loadAllEquipment(tx)).flatMap((equipment) => {
    if (equipment.state === "retired") return [];
    const own = calibrations.filter(({ equipmentId }) => equipmentId === equipment.id);
    const inForce = calibrationInForce(own, today);
    const state = dueState(inForce?.dueOn ?? null, today);
    const needsOne = equipment.kind === "reference" || equipment.kind === "voltmeter";
    if (state === "in-date" || (state === "none" && !needsOne)) return [];
    return [
      {
        key: equipment.id,
        label: equipment.tag,
        detail: `${dueLabels[state].toLowerCase()}${inForce ? `, ${inForce.dueOn}` : ""}`,
        href: `/standards/${equipment.id}`,
        state: state === "none" ? "out-of-date" : state,
      },
    ];
  });
  return { count: due.length, items: due.slice(0, shown) };
};
