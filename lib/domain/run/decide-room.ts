import type { AmbientFindings } from "../calibration/ambient-findings";
import { ok, type Result, refuse } from "../refusal";
import type { RoomMoment } from "./room-figures";
import { demandOpen } from "./states";

type Asked = { readonly moment: RoomMoment; readonly percent?: number };
type Findings = Pick<AmbientFindings, "humidity">;

/** While the run is the technician's; its end only once it has begun; humidity only by an instrument calibrated for it. */
export const decideRoom = (
  run: { readonly number: string; readonly state: string; readonly startedAt: Date | null },
  asked: Asked,
  instrument: { readonly tag: string; readonly findings: Findings | null; readonly problem: string | null },
): Result<Findings> => {
  const open = demandOpen(run);
  if (!open.ok) return open;
  if (asked.moment === "end" && run.startedAt === null)
    return refuse("wrong-state", "Nothing was stored.", {
      moment: `Run ${run.number} has no reading yet: record the room at its start first.`,
    });
  if (instrument.problem !== null || instrument.findings === null)
    return refuse("rule", "Nothing was stored.", {
      instrument:
        instrument.problem ?? `${instrument.tag} has no calibration. Record its certificate under Standards.`,
    });
  if (asked.percent !== undefined && instrument.findings.humidity === undefined)
    return refuse("rule", "Nothing was stored.", {
      percent: `The certificate of ${instrument.tag} does not speak of humidity. Leave this empty, or choose another instrument.`,
    });
  return ok(instrument.findings);
};
