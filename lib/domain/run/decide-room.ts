import type { AmbientFindings } from "../calibration/ambient-findings";
import { ok, type Result, refuse } from "../refusal";
import type { RoomMoment } from "./room-figures";
import { demandOpen } from "./states";

type Asked = { readonly moment: RoomMoment; readonly percent?: number; readonly reason: string };
/** Of the moment asked for: whether it was recorded before; and whether a certificate of the run states it. */
type Before = { readonly isRecorded: boolean; readonly isCertified: boolean };
type Findings = Pick<AmbientFindings, "humidity">;

/** ISO/IEC 17025:2017, 7.5.2: what was recorded is amended with its reason, and not behind a certificate's back. */
const decideAgain = ({ moment, reason }: Asked, before: Before): Result<null> => {
  if (!before.isRecorded) return ok(null);
  if (before.isCertified)
    return refuse("rule", "Nothing was stored.", {
      moment: `The room at the ${moment} is recorded, and a certificate of this run that is signed states it. Report nonconforming work if it is wrong.`,
    });
  if (reason === "")
    return refuse("invalid", "Nothing was stored.", {
      reason: `The room at the ${moment} is recorded already. Write why it is recorded again.`,
    });
  return ok(null);
};

/** While the run is the technician's; its end only once it has begun; humidity only by an instrument calibrated for it. */
export const decideRoom = (
  run: { readonly number: string; readonly state: string; readonly startedAt: Date | null },
  asked: Asked,
  instrument: { readonly tag: string; readonly findings: Findings | null; readonly problem: string | null },
  before: Before,
): Result<Findings> => {
  const open = demandOpen(run);
  if (!open.ok) return open;
  const again = decideAgain(asked, before);
  if (!again.ok) return again;
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
