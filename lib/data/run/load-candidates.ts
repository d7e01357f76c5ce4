import type { CalibratedKind } from "@/lib/domain/equipment/types";
import { TypeLetter } from "@/lib/domain/evidence/schema";
import type {
  JunctionCandidate,
  LeadCandidate,
  LoadCandidates,
  Protection,
  ReferenceCandidate,
  SensorCandidate,
} from "@/lib/domain/run/load-candidates";
import type { CreateRunInput } from "@/lib/domain/run/schema";
import { loadFurnaceProblem } from "../equipment/furnace-problem";
import type { Tx } from "../in-scope";
import { providersOf } from "../parts/providers-of";
import { setStanding } from "../parts/set-standing";
import { lockSensors } from "../sql/lock-sensors";
import { equipmentCandidate, referenceCandidate } from "./equipment-candidate";
import { loadConfigurationOn } from "./load-configuration";
import { loadStandards, type Standard } from "./load-standards";

const loadSensors = async (tx: Tx, tags: readonly string[]): Promise<SensorCandidate[]> => {
  const rows = await tx.sensor.findMany({
    where: { tag: { in: [...tags] } },
    include: { line: { include: { setpoints: { orderBy: { celsius: "asc" } }, order: true } } },
    orderBy: { tag: "asc" },
  });
  // Locked, so that no other run can take the same sensor meanwhile; the state is read under the lock.
  const locked = new Map(
    (
      await lockSensors(
        tx,
        rows.map(({ id }) => id),
      )
    ).map((row) => [row.id, row.state]),
  );
  const standing = await setStanding(tx, rows);
  const providers = await providersOf(tx, rows);
  return rows.map(({ line, ...row }) => ({
    id: row.id,
    tag: row.tag,
    customerId: row.customerId,
    type: TypeLetter.parse(row.typeLetter),
    protection: row.protection as Protection,
    state: locked.get(row.id) ?? row.state,
    orderNumber: line.order.number,
    orderState: line.order.state,
    providerName: providers.get(line.providerId ?? "") ?? null,
    orderedCelsius: line.setpoints.map(({ celsius }) => celsius),
    maximumCelsius: line.maximumCelsius,
    nextSet: standing.get(row.id)?.next ?? null,
  }));
};

const tagsOf = (input: CreateRunInput, kind: "sensor" | "reference"): string[] =>
  input.places.flatMap(({ item }) => (item.kind === kind ? [item.tag] : []));

/** All that the rules of a furnace load want to know of what was chosen, as it is on a day. */
export const loadCandidates = async (
  tx: Tx,
  input: CreateRunInput,
  day: string,
  now: Date,
): Promise<LoadCandidates> => {
  const configuration = await loadConfigurationOn(tx, input.configurationId, day, now);
  const junctionIds = [...new Set(input.places.map(({ junctionId }) => junctionId))];
  const leadIds = [...new Set(input.places.flatMap(({ leadId }) => leadId ?? []))];
  const referenceTags = tagsOf(input, "reference");
  const standards = await loadStandards(
    tx,
    { ids: [input.voltmeterId, input.scannerId, ...junctionIds, ...leadIds], tags: referenceTags },
    { day, moment: now },
  );
  const references = referenceTags.flatMap(
    (tag): ReferenceCandidate | readonly [] => referenceCandidate(standards.byTag("reference", tag)) ?? [],
  );
  const junctions = junctionIds.flatMap((id): JunctionCandidate[] => {
    const standard = standards.byId("junction", id);
    const base = equipmentCandidate(standard);
    if (!standard || !base) return [];
    return [
      { ...base, celsius: standard.calibration?.findings.celsius ?? standard.equipment.particulars.celsius },
    ];
  });
  return {
    configuration: configuration && {
      id: configuration.id,
      name: configuration.name,
      kind: configuration.kind,
      places: configuration.places,
      minimumCelsius: configuration.furnace.minimumCelsius,
      maximumCelsius: configuration.furnace.maximumCelsius,
      furnaceProblem: await loadFurnaceProblem(tx, configuration.furnace.equipmentId, day),
      characterisation: configuration.characterisation,
    },
    voltmeter: equipmentCandidate(standards.byId("voltmeter", input.voltmeterId)),
    scanner: equipmentCandidate(standards.byId("scanner", input.scannerId)),
    sensors: await loadSensors(tx, tagsOf(input, "sensor")),
    references,
    junctions,
    leads: leadIds.flatMap((id): LeadCandidate[] => {
      const standard = standards.byId("lead", id);
      const base = equipmentCandidate(standard as Standard<CalibratedKind> | null);
      return standard && base ? [{ ...base, type: standard.equipment.particulars.type }] : [];
    }),
  };
};
