import { calibrationInForce } from "@/lib/domain/calibration/in-force";
import { isCalibrationOf, readCalibration } from "@/lib/domain/calibration/read-calibration";
import type { Calibration } from "@/lib/domain/calibration/types";
import { isEquipmentOf, readEquipment } from "@/lib/domain/equipment/read-equipment";
import type { Equipment, EquipmentKind } from "@/lib/domain/equipment/types";
import type { Tx } from "../in-scope";

export type Standard<K extends EquipmentKind> = {
  readonly equipment: Equipment<K>;
  /** In force on the day; null where none is recorded. */
  readonly calibration: Calibration<K> | null;
};

/** Equipment by id or by tag, each with the calibration that counted on a day. */
export const loadStandards = async (
  tx: Tx,
  which: { readonly ids?: readonly string[]; readonly tags?: readonly string[] },
  day: string,
) => {
  const rows = await tx.equipment.findMany({
    where: { OR: [{ id: { in: [...(which.ids ?? [])] } }, { tag: { in: [...(which.tags ?? [])] } }] },
    include: { calibrations: { orderBy: [{ performedOn: "asc" }, { recordedAt: "asc" }] } },
  });
  const all = rows.map(({ calibrations, ...row }) => ({
    equipment: readEquipment(row),
    calibration: calibrationInForce(calibrations.map(readCalibration), day),
  }));
  const of = <K extends EquipmentKind>(
    kind: K,
    named: (equipment: Equipment) => boolean,
  ): Standard<K> | null => {
    const found = all.find(({ equipment }) => named(equipment) && isEquipmentOf(equipment, kind));
    if (!found) return null;
    const { equipment, calibration } = found;
    return {
      equipment: equipment as Equipment<K>,
      calibration:
        calibration && isCalibrationOf(calibration, kind) ? (calibration as unknown as Calibration<K>) : null,
    };
  };
  return {
    byId: <K extends EquipmentKind>(kind: K, id: string) => of(kind, (equipment) => equipment.id === id),
    byTag: <K extends EquipmentKind>(kind: K, tag: string) => of(kind, (equipment) => equipment.tag === tag),
  };
};
