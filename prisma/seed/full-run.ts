import { createRun } from "@/lib/operations/run/create";
import { recordTipCheck } from "@/lib/operations/run/record-tip-check";
import { submitRun } from "@/lib/operations/run/submit";
import { program, references, sensors, zeroChannel } from "@/lib/station/simulation/scenario";
import { tellGate } from "./gate";
import type { Cast } from "./people";
import { demoProcedure } from "./procedures";
import { tellReadings } from "./readings";
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

  log("the run: six hours of scans, windows, evaluation");
  await tellReadings(teller, cast, { run, seed, days: 3, fileName: "overnight-scan.csv" });
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
