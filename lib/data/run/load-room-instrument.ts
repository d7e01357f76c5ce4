import { isoDay } from "@/lib/domain/calibration/due";
import { equipmentProblem } from "@/lib/domain/run/equipment-problem";
import type { Tx } from "../in-scope";
import { equipmentCandidate } from "./equipment-candidate";
import { loadStandards } from "./load-standards";

/**
 * What tells the room: its findings, and why it cannot be used. It has to be in order now, and like the rest of the bench
 * when the run was made.
 */
export const loadRoomInstrument = async (tx: Tx, tag: string, madeAt: Date, now: Date) => {
  const asOf = async (moment: Date) => {
    const standards = await loadStandards(tx, { tags: [tag] }, { day: isoDay(moment), moment });
    const standard = standards.byTag("ambient", tag);
    return {
      standard,
      problem: equipmentProblem(equipmentCandidate(standard), "ambient", isoDay(moment)),
    };
  };
  const [then, today] = [await asOf(madeAt), await asOf(now)];
  const calibration = today.standard?.calibration ?? null;
  return {
    id: today.standard?.equipment.id ?? null,
    tag,
    certificate: calibration?.certificate ?? "",
    findings: calibration?.findings ?? null,
    problem: today.problem ?? then.problem,
  };
};
