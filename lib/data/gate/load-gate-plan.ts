import { readBores } from "@/lib/domain/furnace/bores";
import type { GatePlace, GatePlan } from "@/lib/domain/gate/plan";
import { Refused } from "@/lib/domain/refusal";
import { loadFurnaceProblem } from "../equipment/furnace-problem";
import type { Tx } from "../in-scope";
import { equipmentCandidate, referenceCandidate } from "../run/equipment-candidate";
import { loadConfigurationOn } from "../run/load-configuration";
import type { Run } from "../run/load-run";
import { loadRunStanding } from "../run/load-run-standing";
import { loadStandards } from "../run/load-standards";
import { loadBench } from "./load-bench";
import { loadGateSensors } from "./load-gate-sensors";
import { loadLastTime } from "./load-last-time";
import { loadOtherRuns } from "./load-other-runs";
import { loadProcedure } from "./load-procedure";
import { loadThermometers } from "./load-thermometers";

const configurationOn = async (tx: Tx, run: Run, day: string): Promise<GatePlan["configuration"]> => {
  const row = await loadConfigurationOn(tx, run.configurationId, day, run.createdAt);
  if (!row) throw new Refused({ code: "not-found", message: "The furnace configuration is not recorded." });
  return {
    id: row.id,
    name: row.name,
    kind: row.kind,
    places: row.places,
    minimumCelsius: row.furnace.minimumCelsius,
    maximumCelsius: row.furnace.maximumCelsius,
    immersionMillimetre: row.immersionMillimetre,
    tubeMillimetre: row.furnace.boreMillimetre,
    bores: readBores(row.bores).map(({ number, diameterMillimetre }) => ({
      place: number,
      diameterMillimetre,
    })),
    furnaceProblem: (await loadFurnaceProblem(tx, row.furnace.equipmentId, day))?.message ?? null,
    characterisation: row.characterisation,
  };
};

const standardsOf = async (tx: Tx, run: Run, day: string) => {
  const junctionIds = [...new Set(run.places.map(({ junctionId }) => junctionId))];
  const referenceIds = run.places.flatMap(({ equipmentId }) => equipmentId ?? []);
  const leadIds = [...new Set(run.places.flatMap(({ leadId }) => leadId ?? []))];
  const ids = [run.voltmeterId, run.scannerId, ...junctionIds, ...referenceIds, ...leadIds];
  const standards = await loadStandards(tx, { ids }, { day, moment: run.createdAt });
  return {
    voltmeter: equipmentCandidate(standards.byId("voltmeter", run.voltmeterId)),
    scanner: equipmentCandidate(standards.byId("scanner", run.scannerId)),
    references: referenceIds.flatMap((id) => referenceCandidate(standards.byId("reference", id)) ?? []),
    junctions: junctionIds.flatMap((id) => equipmentCandidate(standards.byId("junction", id)) ?? []),
    leads: leadIds.flatMap((id) => equipmentCandidate(standards.byId("lead", id)) ?? []),
  };
};

type Standards = Awaited<ReturnType<typeof standardsOf>>;

const placesOf = (
  run: Run,
  { references, junctions }: Standards,
  sensors: ReadonlyMap<string, { readonly tag: string; readonly type: GatePlace["type"] }>,
): readonly GatePlace[] =>
  run.places.map((place) => {
    const sensor = place.sensorId === null ? undefined : sensors.get(place.sensorId);
    const reference = references.find(({ id }) => id === place.equipmentId);
    return {
      place: place.place,
      channel: place.channel,
      kind: place.kind as GatePlace["kind"],
      tag: sensor?.tag ?? reference?.tag ?? null,
      type: sensor?.type ?? reference?.type ?? null,
      junction: junctions.find(({ id }) => id === place.junctionId)?.tag ?? "",
      junctionCelsius: place.junctionCelsius,
      immersionMillimetre: place.immersionMillimetre,
    };
  });

/** All that the gate judges a run by on a day, with the reasons that stand against its rows. */
export const loadGatePlan = async (tx: Tx, run: Run, day: string) => {
  const standards = await standardsOf(tx, run, day);
  const sensors = await loadGateSensors(tx, run);
  const loaded = run.places.flatMap(({ sensorId }) => sensorId ?? []);
  const byId = new Map(loaded.flatMap((id, at) => (sensors[at] ? [[id, sensors[at]] as const] : [])));
  const standing = await loadRunStanding(tx, run.id);
  const { checks, reasons } = await loadBench(tx, run.id, day);
  const { procedure, policy } = await loadProcedure(tx, run.procedureRevisionId);
  const plan: GatePlan = {
    run: run.number,
    day,
    setpointsCelsius: run.setpoints.map(({ celsius }) => celsius),
    configuration: await configurationOn(tx, run, day),
    places: placesOf(run, standards, byId),
    sensors,
    ...standards,
    junctionThermometers: await loadThermometers(
      tx,
      checks.junctions.map(({ thermometer }) => thermometer),
      day,
    ),
    procedure,
    bench: checks,
    tips: run.places
      .filter(({ kind }) => kind !== "shorted")
      .map(({ id, place }) => ({
        place,
        check: standing.tips.find(({ loadPlaceId }) => loadPlaceId === id) ?? null,
      })),
    otherRuns: await loadOtherRuns(tx, run.id),
    lastTime: await loadLastTime(tx, run),
  };
  return { plan, policy, reasons };
};
