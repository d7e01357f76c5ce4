import { createHash } from "node:crypto";
import { digestOfRoots } from "@/lib/data/evidence/block-hash";
import { inScope, type Tx } from "@/lib/data/in-scope";
import { canonical } from "@/lib/domain/audit/canonical";
import type { EvaluatedPoint } from "@/lib/domain/evidence/evaluation";
import type { DeviationFunctionChoice } from "@/lib/domain/evidence/schema";
import type { World } from "./build-world";
import { evidenceHead, measuredPoint } from "./evaluated-point";

/** A submitted run with its evaluation, written row by row: invented figures, consistent with each other. */

export type RunOptions = {
  /** Whose sensors, one entry each. */
  readonly owners: readonly ("north" | "south")[];
  readonly setpoints?: readonly { readonly typed: string; readonly celsius: number }[];
  readonly temperatureUnit?: "C" | "F";
  readonly decisionRule?: "none" | "simple" | "guarded";
  readonly typeLetter?: "K" | "N" | "S" | "R";
  /** Changes a point before it is stored. */
  readonly change?: (point: EvaluatedPoint, sensorIndex: number) => EvaluatedPoint;
  readonly state?: "submitted" | "measuring";
  /** As a procedure asks for it of every sensor. */
  readonly deviationFunction?: DeviationFunctionChoice;
  /** What the line asks for beyond its points. */
  readonly lineOptions?: Readonly<Record<string, unknown>>;
  /** A further run of sensors that are there already, put into review with it. */
  readonly again?: readonly { readonly id: string; readonly customerId: string }[];
  readonly setKind?: "as-received" | "after-anneal";
  readonly createdAt?: Date;
  readonly findings?: readonly { code: string; path: string; message: string }[];
};

const at = new Date("2026-03-02T08:00:00Z");
const digest = (text: string) => Uint8Array.from(createHash("sha256").update(text).digest());
let count = 0;
/** Unique within a test file, which has a database of its own; rising, so that tags sort as they were made. */
const uniqueTag = () => {
  count += 1;
  return String(count).padStart(6, "0");
};

const order = async (tx: Tx, world: World, owner: "north" | "south", options: RunOptions) => {
  const customerId = world[owner].id;
  const rule = options.decisionRule ?? "guarded";
  const made = await tx.order.create({
    data: {
      number: `O-${uniqueTag()}`,
      customerId,
      purchaseOrder: "PO-77",
      state: "accepted",
      decisionRule: rule,
      guardBandRatio: rule === "guarded" ? 1 : null,
      decisionRuleAgreedBy: rule === "none" ? null : "Lee Buyer",
      decisionRuleAgreedOn: rule === "none" ? null : new Date("2026-02-20"),
      recordedById: world.people.desk.personId,
      recordedAt: at,
      acceptedById: world.people.desk.personId,
      acceptedAt: at,
    },
  });
  await tx.orderReview.create({
    data: {
      orderId: made.id,
      customerId,
      sequence: 1,
      occasion: "acceptance",
      answers: "{}",
      capability: "[]",
      orderVersion: 1,
      reviewedById: world.people.desk.personId,
      reviewedAt: at,
    },
  });
  const line = await tx.orderLine.create({
    data: {
      orderId: made.id,
      customerId,
      position: 1,
      typeLetter: options.typeLetter ?? "K",
      construction: "mineral insulated, 3 mm",
      protection: "metal-sheath",
      quantity: options.owners.filter((other) => other === owner).length,
      toleranceStandard: rule === "none" ? null : "IEC 60584-1:2013",
      toleranceClass: rule === "none" ? null : "1",
      temperatureUnit: options.temperatureUnit ?? "C",
      options: JSON.stringify(options.lineOptions ?? {}),
    },
  });
  await tx.orderSetpoint.createMany({
    data: setpointsOf(options).map((setpoint, index) => ({
      ...setpoint,
      orderLineId: line.id,
      customerId,
      position: index + 1,
    })),
  });
  return { order: made, line };
};

const setpointsOf = (options: RunOptions) =>
  options.setpoints ?? [
    { typed: "600", celsius: 600 },
    { typed: "1000", celsius: 1000 },
  ];

const sensor = async (tx: Tx, world: World, owner: "north" | "south", lineId: string, typeLetter: string) => {
  const customerId = world[owner].id;
  const row = await tx.sensor.create({
    data: {
      tag: `T-${uniqueTag()}`,
      customerId,
      orderLineId: lineId,
      serial: `S${uniqueTag()}`,
      typeLetter,
      construction: "mineral insulated, 3 mm",
      protection: "metal-sheath",
      state: "in-review",
    },
  });
  await tx.intake.create({
    data: {
      sensorId: row.id,
      customerId,
      receivedOn: new Date("2026-02-25"),
      condition: "as-described",
      loopResistanceOhm: 3.2,
      insulationMegaohm: 250,
      polarity: "ok",
      typeCheck: "ok",
      takenInById: world.people.desk.personId,
      takenInAt: at,
    },
  });
  return row;
};

const load = async (
  tx: Tx,
  world: World,
  runId: string,
  sensors: readonly { id: string; customerId: string }[],
  setKind = "as-received",
) => {
  const common = { runId, junctionId: world.junction.id, junctionCelsius: 0, immersionMillimetre: 300 };
  await tx.loadPlace.createMany({
    data: [
      ...world.references.map((reference, index) => ({
        ...common,
        place: `R${index + 1}`,
        kind: "reference",
        equipmentId: reference.id,
        channel: `R${index + 1}`,
      })),
      ...sensors.map((row, index) => ({
        ...common,
        place: String(index + 1),
        kind: "sensor",
        sensorId: row.id,
        customerId: row.customerId,
        setKind,
        channel: `CH${index + 1}`,
      })),
    ],
  });
  const places = await tx.loadPlace.findMany({ where: { runId, kind: "sensor" } });
  await tx.tipCheck.createMany({
    data: places.map((place) => ({
      runId,
      loadPlaceId: place.id,
      riseMicrovolt: 210,
      onlyThisChannel: true,
      checkedById: world.people.technician.personId,
      checkedAt: at,
    })),
  });
};

/** Another evaluation of a run: same sensors and setpoints. */
export const addEvaluation = async (
  tx: Tx,
  world: World,
  runId: string,
  sequence: number,
  options: RunOptions,
) => {
  const setpoints = await tx.runSetpoint.findMany({ where: { runId }, orderBy: { position: "asc" } });
  const places = await tx.loadPlace.findMany({ where: { runId, kind: "sensor" } });
  const sensors = await tx.sensor.findMany({
    where: { id: { in: places.flatMap(({ sensorId }) => sensorId ?? []) } },
    orderBy: { serial: "asc" },
  });
  const { deviationFunction } = options;
  const evidence = canonical({
    // No readings stand behind these figures.
    ...{ sensors: [], load: [], states: [], scans: { channels: [] } },
    ...evidenceHead(options.decisionRule ?? "guarded"),
    ...(deviationFunction ? { sensors: sensors.map(({ tag }) => ({ id: tag, deviationFunction })) } : {}),
  });
  const evaluation = await tx.evaluation.create({
    data: {
      runId,
      sequence,
      engineVersion: "1",
      evidence,
      blocksDigest: digestOfRoots([]),
      inputsDigest: digest(`${evidence}${sequence}`),
      findings: JSON.stringify(options.findings ?? []),
      evaluatedById: world.people.technician.personId,
      evaluatedAt: at,
    },
  });
  await tx.result.createMany({
    data: sensors.flatMap((row, index) =>
      setpoints.map((setpoint) => {
        const made = measuredPoint({
          sensor: row.tag,
          setpoint: setpoint.id,
          type: options.typeLetter ?? "K",
          celsius: setpoint.celsius,
          error: 0.4 + sequence / 10,
          rule: options.decisionRule ?? "guarded",
        });
        const point = options.change?.(made, index) ?? made;
        return {
          evaluationId: evaluation.id,
          runId,
          sensorId: row.id,
          customerId: row.customerId,
          setpointId: setpoint.id,
          state: point.state,
          point: canonical(point),
        };
      }),
    ),
  });
  return evaluation;
};

const windows = async (tx: Tx, world: World, runId: string) => {
  const setpoints = await tx.runSetpoint.findMany({ where: { runId }, orderBy: { position: "asc" } });
  await tx.stabilityWindow.createMany({
    data: setpoints.map((setpoint, index) => ({
      runId,
      setpointId: setpoint.id,
      fromSeconds: 3600 * (index + 1),
      toSeconds: 3600 * (index + 1) + 600,
      origin: "proposed",
      assessment: "{}",
      blocksDigest: digestOfRoots([]),
      acceptedById: world.people.technician.personId,
      acceptedAt: at,
    })),
  });
};

export const buildRun = (world: World, options: RunOptions) =>
  inScope({ kind: "laboratory" }, async (tx) => {
    const sensors = [];
    const orders = new Map<string, Awaited<ReturnType<typeof order>>>();
    for (const owner of options.again ? [] : new Set(options.owners))
      orders.set(owner, await order(tx, world, owner, options));
    for (const { id } of options.again ?? [])
      sensors.push(await tx.sensor.update({ where: { id }, data: { state: "in-review" } }));
    for (const owner of options.again ? [] : options.owners)
      sensors.push(await sensor(tx, world, owner, orders.get(owner)!.line.id, options.typeLetter ?? "K"));
    const run = await tx.run.create({
      data: {
        number: `R-${uniqueTag()}`,
        configurationId: world.configuration.id,
        voltmeterId: world.voltmeter.id,
        scannerId: world.scanner.id,
        state: options.state ?? "submitted",
        performerId: world.people.technician.personId,
        createdAt: options.createdAt ?? at,
        startedAt: options.createdAt ?? at,
        procedureRevisionId: world.procedureRevisionId,
        budgetInputs: "{}",
      },
    });
    await tx.runSetpoint.createMany({
      data: setpointsOf(options).map(({ celsius }, index) => ({
        runId: run.id,
        position: index + 1,
        celsius,
      })),
    });
    await load(tx, world, run.id, sensors, options.setKind);
    await windows(tx, world, run.id);
    const evaluation = await addEvaluation(tx, world, run.id, 1, options);
    return { run, evaluation, sensors, orders: [...orders.values()].map(({ order: made }) => made) };
  });
