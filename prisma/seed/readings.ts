import { proposeWindows } from "@/lib/domain/evidence/propose-windows";
import { Evidence, type EvidenceInput } from "@/lib/domain/evidence/schema";
import { acceptWindow } from "@/lib/operations/run/accept-window";
import { evaluateRun } from "@/lib/operations/run/evaluate";
import { receiveReadings } from "@/lib/operations/run/receive-readings";
import { readingsFile } from "@/lib/station/simulation/readings-file";
import { simulateRun } from "@/lib/station/simulation/simulate-run";
import type { Cast } from "./people";
import { tellRoom } from "./room";
import type { Teller } from "./teller";

type Measured = {
  readonly run: string;
  /** Which of the simulated furnaces. */
  readonly seed: number;
  /** Before today. */
  readonly days: number;
  readonly fileName: string;
  /** Those that were connected; left out: all of the simulated load. */
  readonly channels?: ReadonlySet<string>;
};

/** Six hours of scans, the proposed windows accepted, and the evaluation. */
export const tellReadings = async (
  teller: Teller,
  cast: Cast,
  { run, seed, days, fileName, channels }: Measured,
): Promise<void> => {
  const { tell, at } = teller;
  const { technician } = cast;
  const simulated = simulateRun(seed).evidence;
  const evidence: EvidenceInput = {
    ...simulated,
    scans: { ...simulated.scans, startedAt: at(days, "06:30").toISOString() },
  };
  const connected: EvidenceInput = {
    ...evidence,
    scans: {
      ...evidence.scans,
      channels: evidence.scans.channels.filter(({ channel }) => channels?.has(channel) ?? true),
    },
  };
  await tell(receiveReadings, technician, at(days, "12:20"), {
    run,
    fileName,
    bytes: new TextEncoder().encode(readingsFile(connected)),
  });
  await tellRoom(teller, cast, run, "end", days);
  for (const [index, { proposal, setpoint }] of proposeWindows(Evidence.parse(evidence)).entries()) {
    if (proposal.kind === "none") throw new Error(`${setpoint}: ${proposal.reason}`);
    const { fromSeconds, toSeconds } = proposal.window;
    await tell(acceptWindow, technician, at(days, "13:00"), {
      run,
      setpoint: index + 1,
      fromSeconds,
      toSeconds,
    });
  }
  await tell(evaluateRun, technician, at(days, "13:20"), { run });
};
