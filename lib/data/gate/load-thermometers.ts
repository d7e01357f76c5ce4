import { acceptanceOf } from "@/lib/domain/calibration/acceptance";
import { isoDay } from "@/lib/domain/calibration/due";
import { calibrationInForce } from "@/lib/domain/calibration/in-force";
import type { GatePlan } from "@/lib/domain/gate/plan";
import type { Tx } from "../in-scope";

/** The thermometers named in junction checks, with the calibration that counts on the day. */
export const loadThermometers = async (
  tx: Tx,
  tags: readonly string[],
  day: string,
): Promise<GatePlan["junctionThermometers"]> => {
  const rows = await tx.equipment.findMany({
    where: { tag: { in: [...tags] }, kind: "thermometer" },
    include: {
      calibrations: {
        orderBy: [{ performedOn: "asc" }, { recordedAt: "asc" }],
        include: { decisions: { orderBy: { id: "asc" } } },
      },
    },
  });
  return rows.map(({ tag, state, calibrations }) => ({
    tag,
    state,
    calibration: calibrationInForce(
      calibrations
        .filter(({ decisions }) => acceptanceOf(decisions) === "accepted")
        .map(({ performedOn, dueOn }) => ({ performedOn: isoDay(performedOn), dueOn: isoDay(dueOn) })),
      day,
    ),
  }));
};
