import { Refused } from "@/lib/domain/refusal";
import type { PlacedBlock } from "@/lib/domain/run/place-block";
import type { SensorState } from "@/lib/domain/sensor/transitions";
import { insertScanBlock, type StoredBlock } from "../evidence/insert-scan-block";
import type { Tx } from "../in-scope";
import { sensorsGone } from "../parts/sensors-gone";
import { setSensorState } from "../sensor/set-state";
import type { Run } from "./load-run";

type Incoming = {
  readonly run: Run;
  readonly placed: PlacedBlock;
  readonly source: "file" | "typed";
  readonly fileName: string | null;
  readonly sourceSha256: Uint8Array;
  readonly receivedById: string;
  readonly receivedAt: Date;
};

/** The same bytes twice would count every reading twice; in another run they belong to one of the two only. */
const demandNew = async (tx: Tx, sha256: Uint8Array): Promise<void> => {
  const known = await tx.scanBlock.findFirst({
    where: { sourceSha256: new Uint8Array(sha256) },
    select: { sequence: true, runId: true },
  });
  if (!known) return;
  const { number } = await tx.run.findUniqueOrThrow({ where: { id: known.runId }, select: { number: true } });
  throw new Refused({
    code: "rule",
    message: `These readings are already stored, as block ${known.sequence} of run ${number}. Nothing was stored again.`,
  });
};

const settled: readonly SensorState[] = ["in-review", "issued", "collected"];

/** Stores a block and moves the run and its sensors on: with the first reading the measurement has begun. */
export const storeBlock = async (tx: Tx, incoming: Incoming): Promise<StoredBlock> => {
  const { run, placed } = incoming;
  if (incoming.source === "file") await demandNew(tx, incoming.sourceSha256);
  const owners = new Map(run.places.map(({ channel, customerId }) => [channel, customerId]));
  const last = await tx.scanBlock.aggregate({ where: { runId: run.id }, _max: { sequence: true } });
  const stored = await insertScanBlock(tx, {
    runId: run.id,
    sequence: (last._max.sequence ?? 0) + 1,
    source: incoming.source,
    fileName: incoming.fileName,
    sourceSha256: incoming.sourceSha256,
    channels: placed.channels.map((channel) => ({
      ...channel,
      customerId: owners.get(channel.channel) ?? null,
    })),
    receivedById: incoming.receivedById,
    receivedAt: incoming.receivedAt,
  });
  await tx.run.update({
    where: { id: run.id },
    data: {
      startedAt: placed.startedAt,
      state: run.state === "planned" ? "measuring" : run.state,
      version: { increment: 1 },
    },
  });
  const sensors = await tx.sensor.findMany({
    where: { id: { in: run.places.flatMap(({ sensorId }) => sensorId ?? []) } },
    select: { id: true, state: true },
  });
  // What is signed off in a returned run stays so.
  const gone = await sensorsGone(tx, run.id);
  const open = sensors
    .filter(({ id, state }) => !gone.has(id) && !settled.some((one) => one === state))
    .map(({ id }) => id);
  if (open.length > 0) await setSensorState(tx, open, ["loaded", "measured", "evaluated"], "measured");
  return stored;
};
