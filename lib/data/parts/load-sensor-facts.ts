import { asSetKind } from "@/lib/domain/parts/decide-set";
import type { ExternalFacts } from "@/lib/domain/parts/external-parts";
import { asMeasuredSets } from "@/lib/domain/parts/measured-sets";
import type { PartLoad, SensorFacts } from "@/lib/domain/parts/parts-of";
import type { HandBack } from "@/lib/domain/sensor/hand-back";
import { withStandings } from "../certificate/with-standings";
import type { Tx } from "../in-scope";
import { externalOf } from "./external-of";

const loadRuns = async (tx: Tx, sensorIds: readonly string[]) => {
  const places = await tx.loadPlace.findMany({
    where: { sensorId: { in: [...sensorIds] } },
    include: { run: { include: { setpoints: true } } },
  });
  return places.toSorted((left, right) => left.run.createdAt.getTime() - right.run.createdAt.getTime());
};

type Places = Awaited<ReturnType<typeof loadRuns>>;

const loadOutcomes = async (tx: Tx, sensorIds: readonly string[], places: Places) => {
  const of = { sensorId: { in: [...sensorIds] } };
  const results = await tx.result.findMany({
    where: of,
    select: {
      sensorId: true,
      runId: true,
      setpointId: true,
      state: true,
      evaluation: { select: { sequence: true } },
    },
  });
  const last = new Map<string, number>();
  for (const { runId, evaluation } of results)
    last.set(runId, Math.max(last.get(runId) ?? 0, evaluation.sequence));
  const parts = await tx.certificatePart.findMany({
    where: of,
    select: { certificateId: true, sensorId: true, runId: true },
  });
  const rows = await tx.certificate.findMany({
    where: { OR: [of, { id: { in: parts.map(({ certificateId }) => certificateId) } }] },
    select: { id: true, number: true, sensorId: true, runId: true },
    orderBy: { number: "asc" },
  });
  // What counts first, and the latest of it: an amended one gives way to its successor.
  const own = await withStandings(tx, rows);
  return {
    results: results.filter(({ runId, evaluation }) => last.get(runId) === evaluation.sequence),
    decisions: await tx.reviewDecision.findMany({
      where: {
        ...of,
        decision: { in: ["kept", "put-back"] },
        runId: { in: places.map(({ runId }) => runId) },
      },
      orderBy: { id: "asc" },
    }),
    certificateOf: (sensorId: string, runId: string) => {
      const told = parts.filter((one) => one.sensorId === sensorId && one.runId === runId);
      return (
        own.find(
          (one) =>
            told.some(({ certificateId }) => certificateId === one.id) ||
            (one.sensorId === sensorId && one.runId === runId),
        ) ?? null
      );
    },
  };
};

type Outcomes = Awaited<ReturnType<typeof loadOutcomes>>;

const loadOf = (place: Places[number], sensorId: string, outcomes: Outcomes): PartLoad => {
  const { run } = place;
  const celsius = new Map(run.setpoints.map((setpoint) => [setpoint.id, setpoint.celsius]));
  const left = outcomes.decisions.findLast((one) => one.sensorId === sensorId && one.runId === run.id);
  const certificate = outcomes.certificateOf(sensorId, run.id);
  return {
    run: run.number,
    runState: run.state,
    set: asSetKind(place.setKind),
    setpointsCelsius: run.setpoints.map((setpoint) => setpoint.celsius),
    results: outcomes.results
      .filter((result) => result.sensorId === sensorId && result.runId === run.id)
      .map((result) => ({
        celsius: celsius.get(result.setpointId) ?? Number.NaN,
        state: result.state as "measured" | "invalid" | "not-reached",
      })),
    left: left ? (left.decision as "kept" | "put-back") : null,
    certificate: certificate?.number ?? null,
    isWithdrawn: certificate?.standing.kind === "withdrawn",
  };
};

type Held = {
  readonly ids: ReadonlySet<string>;
  readonly handBacks: ReadonlyMap<string, HandBack>;
};

/** What the state of an order's sensors at their setpoints is told from, by line. A customer's scope shows its own. */
export const loadSensorFacts = async (tx: Tx, orderNumber: string, held: Held) => {
  const lines = await tx.orderLine.findMany({
    where: { order: { number: orderNumber } },
    include: { setpoints: { orderBy: { position: "asc" } }, sensors: { orderBy: { tag: "asc" } } },
    orderBy: { position: "asc" },
  });
  const ids = lines.flatMap(({ sensors }) => sensors.map(({ id }) => id));
  const places = await loadRuns(tx, ids);
  const outcomes = await loadOutcomes(tx, ids, places);
  const anneals = await tx.sensorAnneal.findMany({
    where: { sensorId: { in: ids } },
    select: { sensorId: true },
  });
  const external: ReadonlyMap<string, ExternalFacts> = await externalOf(tx, lines);
  return lines.map((line) => ({
    position: line.position,
    unit: line.temperatureUnit === "F" ? ("°F" as const) : ("°C" as const),
    setpoints: line.setpoints.map(({ typed, celsius }) => ({ typed, celsius })),
    sensors: line.sensors.map(
      (sensor): SensorFacts => ({
        tag: sensor.tag,
        serial: sensor.serial,
        state: sensor.state,
        sets: asMeasuredSets(line.options),
        isAnnealed: anneals.some(({ sensorId }) => sensorId === sensor.id),
        isHeld: held.ids.has(sensor.id),
        handBack: held.handBacks.get(sensor.id) ?? null,
        setpoints: line.setpoints.map(({ typed, celsius }) => ({ typed, celsius })),
        ...(external.has(sensor.id) ? { external: external.get(sensor.id) as ExternalFacts } : {}),
        loads: places
          .filter(({ sensorId }) => sensorId === sensor.id)
          .map((place) => loadOf(place, sensor.id, outcomes)),
      }),
    ),
  }));
};
