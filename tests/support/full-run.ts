import type { z } from "zod";
import type { CreateRunInput } from "@/lib/domain/run/schema";
import { execute } from "@/lib/operations/execute";
import { createRun } from "@/lib/operations/run/create";
import { receiveReadings } from "@/lib/operations/run/receive-readings";
import { recordTipCheck } from "@/lib/operations/run/record-tip-check";
import { readingsFile } from "@/lib/station/simulation/readings-file";
import { references, sensors } from "@/lib/station/simulation/scenario";
import { simulateRun } from "@/lib/station/simulation/simulate-run";
import { accepted, lineInput, orderInput, received } from "./orders";
import { passGate } from "./pass-gate";
import { benchClock, type RunBench } from "./run-bench";

export type CreateInput = z.input<typeof CreateRunInput>;

const setpoints = "300 500 700 900 1100";

const orderOf = async (bench: RunBench, customer: "A" | "B"): Promise<[string, string][]> => {
  const own = sensors.filter((sensor) => sensor.customer === customer);
  const owner = customer === "A" ? bench.northern : bench.southern;
  const number = await accepted(
    bench,
    orderInput(owner.customerId, {
      lines: own.map((sensor) => ({
        ...lineInput,
        typeLetter: sensor.type,
        construction: sensor.construction,
        protection: sensor.protection,
        quantity: "1",
        setpoints,
        tolerance: sensor.toleranceClass,
      })),
    }),
  );
  const tags: [string, string][] = [];
  for (const [index, sensor] of own.entries()) {
    const [tag] = await received(bench, number, sensor.serial, index + 1);
    tags.push([sensor.id, tag!]);
  }
  return tags;
};

/** The scenario's load for six sensors of two customers that are at the desk; ready for `createRun`. */
export const fullRunInput = async (bench: RunBench): Promise<CreateInput> => {
  const tags = new Map([...(await orderOf(bench, "A")), ...(await orderOf(bench, "B"))]);
  const common = { junctionId: bench.junctionId, junctionCelsius: 0, immersionMillimetre: 400 };
  return {
    configurationId: bench.configurationId,
    voltmeterId: bench.voltmeterId,
    scannerId: bench.scannerId,
    procedure: "demonstration",
    places: [
      ...references.map(({ id, place, channel }) => ({
        ...common,
        place,
        channel,
        item: { kind: "reference" as const, tag: id },
      })),
      ...sensors.map(({ id, place, channel }) => ({
        ...common,
        place,
        channel,
        item: { kind: "sensor" as const, tag: tags.get(id)! },
      })),
      {
        place: "shorted",
        channel: "120",
        junctionId: bench.junctionId,
        junctionCelsius: 0,
        item: { kind: "shorted" as const },
      },
    ],
  };
};

/** Shortly before the simulated furnace begins. */
export const gateClock = () => new Date("2026-10-14T06:15:00Z");

/** Planned, and through its gate. */
export const createFullRun = async (bench: RunBench): Promise<string> => {
  const { number } = await execute(createRun, bench.technician, await fullRunInput(bench), benchClock);
  await passGate(bench, number, gateClock);
  return number;
};

const simulated = new Map<number, ReturnType<typeof simulateRun>>();
export const simulatedRun = (seed: number) => {
  const run = simulated.get(seed) ?? simulateRun(seed);
  simulated.set(seed, run);
  return run;
};

export const bytesOf = (text: string): Uint8Array => new TextEncoder().encode(text);

/** The readings of a seed, as the scanner's file. */
export const uploadSeed = (bench: RunBench, run: string, seed: number, from?: number, to?: number) =>
  execute(
    receiveReadings,
    bench.technician,
    {
      run,
      fileName: `seed-${seed}.csv`,
      bytes: bytesOf(readingsFile(simulatedRun(seed).evidence, from, to)),
    },
    benchClock,
  );

export const warmTips = async (bench: RunBench, run: string, places: readonly string[]) => {
  for (const place of places)
    await execute(
      recordTipCheck,
      bench.technician,
      { run, place, riseMicrovolt: 64, onlyThisChannel: true },
      benchClock,
    );
};

export const allPlaces = [...references, ...sensors].map(({ place }) => place);
