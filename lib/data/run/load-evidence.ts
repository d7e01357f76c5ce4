import { isoDay } from "@/lib/domain/calibration/due";
import { junctionEvidenceOf } from "@/lib/domain/equipment/junction-evidence";
import { type LeadInEvidence, leadEvidenceOf } from "@/lib/domain/equipment/lead-evidence";
import { referenceEvidenceOf } from "@/lib/domain/equipment/reference-evidence";
import { scannerEvidenceOf } from "@/lib/domain/equipment/scanner-evidence";
import { voltmeterEvidenceOf } from "@/lib/domain/equipment/voltmeter-evidence";
import { type Evidence, TypeLetter } from "@/lib/domain/evidence/schema";
import { configurationEvidenceOf } from "@/lib/domain/furnace/configuration-evidence";
import { inhomogeneityInput, type MeasuredInhomogeneity } from "@/lib/domain/furnace/inhomogeneity-test";
import { askedTolerance, readTolerance } from "@/lib/domain/order/asked-tolerance";
import { Refused } from "@/lib/domain/refusal";
import { readBudgetInputs } from "@/lib/domain/run/budget-inputs";
import { composeEvidence, type EvidenceParts } from "@/lib/domain/run/compose-evidence";
import { decisionRuleOf } from "@/lib/domain/run/decision-rule-of";
import type { Protection } from "@/lib/domain/run/load-candidates";
import { setpointId } from "@/lib/domain/run/setpoint-id";
import { assessTipCheck } from "@/lib/domain/run/tip-check";
import { scopeInForce } from "@/lib/domain/scope/scope-in-force";
import { loadReadings, type ReadingsFilter } from "../evidence/read-scan-channels";
import { loadMeasuredInhomogeneity } from "../furnace/inhomogeneity-store";
import { sensorsOutsideScope } from "../gate/sensors-outside-scope";
import type { Tx } from "../in-scope";
import { loadScopeLines } from "../scope/scope-store";
import { loadConfigurationOn } from "./load-configuration";
import { loadRun, type Run } from "./load-run";
import { loadRunStanding, type RunStanding } from "./load-run-standing";
import { loadStandards } from "./load-standards";

type LoadedSensors = Awaited<ReturnType<typeof loadLoadedSensors>>;

export type RunEvidence = {
  readonly evidence: Evidence;
  readonly run: Run;
  readonly standing: RunStanding;
  readonly sensors: LoadedSensors;
};

const demandThere = <T>(value: T | null, what: string): T => {
  if (value === null)
    throw new Refused({ code: "rule", message: `${what} Record it, then come back to this run.` });
  return value;
};

const loadLoadedSensors = async (tx: Tx, run: Run) => {
  const rows = await tx.sensor.findMany({
    where: { id: { in: run.places.flatMap(({ sensorId }) => sensorId ?? []) } },
    include: {
      line: {
        include: {
          setpoints: { orderBy: { celsius: "asc" } },
          order: { include: { customer: { select: { name: true } } } },
        },
      },
    },
  });
  // In the order of their places, which is how the load is read.
  return run.places.flatMap(({ sensorId }) => rows.find(({ id }) => id === sensorId) ?? []);
};

type Measured = ReadonlyMap<string, MeasuredInhomogeneity>;

const loadEquipmentParts = async (tx: Tx, run: Run, day: string, measured: Measured) => {
  const junctionIds = run.places.map(({ junctionId }) => junctionId);
  const referenceIds = run.places.flatMap(({ equipmentId }) => equipmentId ?? []);
  const leadIds = run.places.flatMap(({ leadId }) => leadId ?? []);
  const standards = await loadStandards(
    tx,
    { ids: [run.voltmeterId, run.scannerId, ...junctionIds, ...referenceIds, ...leadIds] },
    { day, moment: run.createdAt },
  );
  const voltmeter = demandThere(
    standards.byId("voltmeter", run.voltmeterId),
    "The voltmeter is not recorded.",
  );
  const scanner = demandThere(standards.byId("scanner", run.scannerId), "The scanner is not recorded.");
  const noCalibration = (tag: string) => `${tag} has no accepted calibration on ${day}.`;
  const references = new Map(
    referenceIds.map((id) => {
      const { equipment, calibration } = demandThere(
        standards.byId("reference", id),
        "A reference is missing.",
      );
      const inForce = demandThere(calibration, noCalibration(equipment.tag));
      return [id, referenceEvidenceOf(equipment, inForce, measured.get(id))];
    }),
  );
  return {
    references,
    voltmeter: voltmeterEvidenceOf(
      voltmeter.equipment,
      demandThere(voltmeter.calibration, noCalibration(voltmeter.equipment.tag)),
    ),
    scanner: scannerEvidenceOf(scanner.equipment, scanner.calibration),
    junctionOf: (id: string, celsius: number) => {
      const { equipment, calibration } = demandThere(
        standards.byId("junction", id),
        "A junction is missing.",
      );
      return junctionEvidenceOf(equipment, calibration, celsius);
    },
    leadOf: (id: string) => {
      const { equipment, calibration } = demandThere(standards.byId("lead", id), "A lead is missing.");
      return leadEvidenceOf(equipment, calibration);
    },
  };
};

type EquipmentParts = Awaited<ReturnType<typeof loadEquipmentParts>>;

const placesOf = (
  run: Run,
  sensors: LoadedSensors,
  equipment: EquipmentParts,
  standing: RunStanding,
): EvidenceParts["places"] =>
  run.places.map((place) => {
    const tag = sensors.find(({ id }) => id === place.sensorId)?.tag;
    const reference = place.equipmentId ? equipment.references.get(place.equipmentId) : undefined;
    const tip = standing.tips.find(({ loadPlaceId }) => loadPlaceId === place.id);
    return {
      place: place.place,
      item: tag
        ? { kind: "sensor", id: tag }
        : reference
          ? { kind: "reference", id: reference.id }
          : { kind: "shorted" },
      channel: place.channel,
      junction: equipment.junctionOf(place.junctionId, place.junctionCelsius),
      ...(place.immersionMillimetre === null ? {} : { immersionMillimetre: place.immersionMillimetre }),
      // A tip whose warmth other channels felt proves nothing.
      tipCheckRiseMicrovolt: tip && assessTipCheck(tip) !== "other-channels-moved" ? tip.riseMicrovolt : null,
    };
  });

const channelsOf = async (tx: Tx, run: Run, filter: ReadingsFilter): Promise<EvidenceParts["channels"]> => {
  const readings = await loadReadings(tx, run.id, filter);
  // In the order of the load, so that the evidence of a run is one text however its blocks came.
  return run.places.flatMap(({ channel }) => {
    const one = readings.get(channel);
    return one
      ? [
          {
            channel,
            seconds: Array.from(one.times),
            microvolts: Array.from(one.values),
            polarity: Array.from(one.polarity, (sign): 1 | -1 => (sign < 0 ? -1 : 1)),
          },
        ]
      : [];
  });
};

/** What was said of setpoints, in the order of the run's setpoints and its load. */
const saidOf = (run: Run, sensors: LoadedSensors, standing: RunStanding) => ({
  windows: run.setpoints.flatMap((setpoint) => {
    const window = standing.windows.find((one) => one.setpointId === setpoint.id);
    return window
      ? [{ setpoint: setpointId(setpoint), fromSeconds: window.fromSeconds, toSeconds: window.toSeconds }]
      : [];
  }),
  states: run.setpoints.flatMap((setpoint) =>
    sensors.flatMap((sensor) => {
      const said = standing.states.find(
        (one) => one.setpointId === setpoint.id && one.sensorId === sensor.id,
      );
      return said && said.state !== "measured"
        ? [
            {
              sensor: sensor.tag,
              setpoint: setpointId(setpoint),
              state: said.state as "invalid" | "not-reached",
              reason: said.reason,
            },
          ]
        : [];
    }),
  ),
});

/** Where a customer's own limit was agreed, for whoever reads the evidence alone. */
const agreementOf = (order: LoadedSensors[number]["line"]["order"]): string =>
  [
    `Order ${order.number}`,
    order.decisionRuleAgreedBy && `agreed by ${order.decisionRuleAgreedBy}`,
    order.decisionRuleAgreedOn && `on ${isoDay(order.decisionRuleAgreedOn)}`,
  ]
    .filter(Boolean)
    .join(", ");

const sensorPart = (
  sensor: LoadedSensors[number],
  measured: Measured,
  joined: LeadInEvidence | null,
): EvidenceParts["sensors"][number] => {
  const { line } = sensor;
  const test = measured.get(sensor.id);
  return {
    id: sensor.tag,
    serial: sensor.serial,
    type: TypeLetter.parse(sensor.typeLetter),
    construction: sensor.construction,
    protection: sensor.protection as Protection,
    tolerance: askedTolerance(
      readTolerance(line, line.temperatureUnit === "F" ? "F" : "C"),
      agreementOf(line.order),
    ),
    ...(joined ? { joined } : {}),
    ...(test ? { inhomogeneity: inhomogeneityInput(test) } : {}),
    decisionRule: decisionRuleOf(sensor.line.order),
    uncertaintyDigits: sensor.line.order.uncertaintyDigits === 1 ? 1 : 2,
  };
};

/**
 * The evidence of a run as it stands: evaluated, exported and re-derived from here, and nowhere else. `filter` names
 * the channels or the blocks wanted; without it all readings are loaded.
 */
export const loadEvidence = async (
  tx: Tx,
  number: string,
  filter: ReadingsFilter = {},
): Promise<RunEvidence | null> => {
  const run = await loadRun(tx, number);
  if (!run) return null;
  const day = isoDay(run.startedAt ?? run.createdAt);
  const configuration = demandThere(
    await loadConfigurationOn(tx, run.configurationId, day, run.createdAt),
    "The furnace configuration is not recorded.",
  );
  const characterisation = demandThere(
    configuration.characterisation,
    `${configuration.name} had no accepted characterisation by ${day}.`,
  );
  const sensors = await loadLoadedSensors(tx, run);
  const standing = await loadRunStanding(tx, run.id);
  // What was accepted after the run was made changes nothing in it.
  const asOf = { day, moment: run.createdAt };
  const tested = run.places.flatMap(({ sensorId, equipmentId }) => sensorId ?? equipmentId ?? []);
  const measured = await loadMeasuredInhomogeneity(tx, tested, asOf);
  const equipment = await loadEquipmentParts(tx, run, day, measured);
  const outside = await sensorsOutsideScope(tx, run.id);
  const laboratory = await tx.laboratory.findFirst({ select: { name: true } });
  demandThere(sensors[0] ?? null, "The run has no sensor.");
  const evidence = composeEvidence({
    run,
    laboratory: laboratory?.name ?? "",
    budget: readBudgetInputs(run.budgetInputs),
    configuration: configurationEvidenceOf(configuration.furnace, configuration, characterisation, {
      sensors: run.places.flatMap(({ kind, place }) => (kind === "sensor" ? place : [])),
      references: run.places.flatMap(({ kind, place }) => (kind === "reference" ? place : [])),
    }),
    references: [...equipment.references.values()],
    voltmeter: equipment.voltmeter,
    scanner: equipment.scanner,
    sensors: sensors.map((sensor) => {
      const reason = outside.get(sensor.tag);
      const leadId = run.places.find(({ sensorId }) => sensorId === sensor.id)?.leadId ?? null;
      const joined = leadId === null ? null : equipment.leadOf(leadId);
      return {
        ...sensorPart(sensor, measured, joined),
        ...(reason === undefined ? {} : { outsideScope: reason }),
      };
    }),
    places: placesOf(run, sensors, equipment, standing),
    setpoints: run.setpoints.map((setpoint) => ({
      id: setpointId(setpoint),
      nominalCelsius: setpoint.celsius,
    })),
    channels: await channelsOf(tx, run, filter),
    ...saidOf(run, sensors, standing),
    scope: scopeInForce(await loadScopeLines(tx), { day, moment: run.createdAt }),
  });
  return { evidence, run, standing, sensors };
};
