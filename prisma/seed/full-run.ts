import { proposeWindows } from "@/lib/domain/evidence/propose-windows";
import { Evidence, type EvidenceInput } from "@/lib/domain/evidence/schema";
import { acceptWindow } from "@/lib/operations/run/accept-window";
import { createRun } from "@/lib/operations/run/create";
import { evaluateRun } from "@/lib/operations/run/evaluate";
import { receiveReadings } from "@/lib/operations/run/receive-readings";
import { recordTipCheck } from "@/lib/operations/run/record-tip-check";
import { submitRun } from "@/lib/operations/run/submit";
import { readingsFile } from "@/lib/station/simulation/readings-file";
import { program, references, sensors, zeroChannel } from "@/lib/station/simulation/scenario";
import { simulateRun } from "@/lib/station/simulation/simulate-run";
import { tellGate } from "./gate";
import type { Cast } from "./people";
import { demoProcedure } from "./procedures";
import type { Bench } from "./standards";
import type { Teller } from "./teller";

/** Which of the simulated furnaces the story is about. */
const seed = 7;

const placesOf = (bench: Bench, tags: ReadonlyMap<string, string>) => {
  const junctionId = bench.junctionId;
  return [
    ...references.map((reference) => ({
      place: reference.place,
      item: { kind: "reference" as const, tag: reference.id },
      channel: reference.channel,
      junctionId,
      immersionMillimetre: 400,
    })),
    ...sensors.map((sensor) => ({
      place: sensor.place,
      item: { kind: "sensor" as const, tag: tags.get(sensor.serial) ?? "" },
      channel: sensor.channel,
      junctionId,
      // As deep as the configuration was characterised: the gate asks for it.
      immersionMillimetre: 400,
    })),
    { ...zeroChannel, item: { kind: "shorted" as const }, junctionId },
  ];
};

/** Warming one tip by hand raises its own channel alone: about 40 µV for platinum, 260 µV for base metal (invented). */
const riseOf = (place: string): number => {
  const sensor = sensors.find((candidate) => candidate.place === place);
  return sensor && sensor.type !== "S" ? 255 + Number(sensor.place) : 41;
};

/** The run of the story: loaded, measured overnight, evaluated and handed to the signatory. Returns its number. */
export const tellFullRun = async (
  teller: Teller,
  cast: Cast,
  bench: Bench,
  tags: ReadonlyMap<string, string>,
  log: (line: string) => void,
): Promise<string> => {
  const { tell, at } = teller;
  const { technician } = cast;
  log("the run: load and tip checks");
  const { number: run } = await tell(createRun, technician, at(3, "06:10"), {
    configurationId: bench.configurationId,
    voltmeterId: bench.voltmeterId,
    scannerId: bench.scannerId,
    procedure: demoProcedure,
    setpointsCelsius: [...program.setpointsCelsius],
    places: placesOf(bench, tags),
    note: "Two references, six sensors of two customers. Simulated readings.",
  });
  for (const { place } of [...references, ...sensors])
    await tell(recordTipCheck, technician, at(3, "06:20"), {
      run,
      place,
      riseMicrovolt: riseOf(place),
      onlyThisChannel: true,
    });

  await tellGate(teller, cast, run, placesOf(bench, tags), 3);

  log("the run: six hours of scans");
  const simulated = simulateRun(seed).evidence;
  const evidence: EvidenceInput = {
    ...simulated,
    scans: { ...simulated.scans, startedAt: at(3, "06:30").toISOString() },
  };
  await tell(receiveReadings, technician, at(3, "12:20"), {
    run,
    fileName: "overnight-scan.csv",
    bytes: new TextEncoder().encode(readingsFile(evidence)),
  });

  log("the run: windows, evaluation, hand-over");
  for (const [index, { proposal, setpoint }] of proposeWindows(Evidence.parse(evidence)).entries()) {
    if (proposal.kind === "none") throw new Error(`${setpoint}: ${proposal.reason}`);
    const { fromSeconds, toSeconds } = proposal.window;
    await tell(acceptWindow, technician, at(3, "13:00"), {
      run,
      setpoint: index + 1,
      fromSeconds,
      toSeconds,
    });
  }
  await tell(evaluateRun, technician, at(3, "13:20"), { run });
  return run;
};

/** Handing over needs the version that was seen. */
export const tellSubmission = async (
  { tell, at }: Teller,
  { technician }: Cast,
  run: string,
  version: number,
): Promise<void> => {
  await tell(submitRun, technician, at(3, "13:40"), { run, version });
};
