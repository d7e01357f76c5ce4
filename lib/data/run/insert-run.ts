import type { LoadCandidates } from "@/lib/domain/run/load-candidates";
import type { CreateRunInput } from "@/lib/domain/run/schema";
import type { Tx } from "../in-scope";
import { nextNumber } from "../number/next-number";

type NewRun = {
  readonly input: CreateRunInput;
  readonly candidates: LoadCandidates;
  readonly setpointsCelsius: readonly number[];
  readonly procedureRevisionId: string;
  /** Those of the revision, canonical text: the run keeps its own. */
  readonly budgetInputs: string;
  readonly performerId: string;
  readonly createdAt: Date;
};

const placeRow = (place: CreateRunInput["places"][number], candidates: LoadCandidates) => {
  const { item } = place;
  const tag = item.kind === "shorted" ? null : item.tag;
  const sensor = item.kind === "sensor" ? candidates.sensors.find((one) => one.tag === tag) : undefined;
  const reference =
    item.kind === "reference" ? candidates.references.find((one) => one.tag === tag) : undefined;
  const junction = candidates.junctions.find(({ id }) => id === place.junctionId);
  return {
    place: place.place,
    kind: item.kind,
    sensorId: sensor?.id ?? null,
    equipmentId: reference?.id ?? null,
    customerId: sensor?.customerId ?? null,
    channel: place.channel,
    junctionId: place.junctionId,
    junctionCelsius: place.junctionCelsius ?? junction?.celsius ?? 0,
    immersionMillimetre: place.immersionMillimetre ?? null,
    leadId: place.leadId ?? null,
    setKind: sensor?.nextSet ?? "as-received",
  };
};

export const insertRun = async (tx: Tx, run: NewRun): Promise<{ id: string; number: string }> => {
  const year = run.createdAt.getUTCFullYear();
  const taken = await nextNumber(tx, `run-${year}`);
  return tx.run.create({
    data: {
      number: `R-${year}-${String(taken).padStart(4, "0")}`,
      configurationId: run.input.configurationId,
      voltmeterId: run.input.voltmeterId,
      scannerId: run.input.scannerId,
      performerId: run.performerId,
      createdAt: run.createdAt,
      procedureRevisionId: run.procedureRevisionId,
      budgetInputs: run.budgetInputs,
      note: run.input.note,
      setpoints: {
        create: run.setpointsCelsius.map((celsius, index) => ({ position: index + 1, celsius })),
      },
      places: { create: run.input.places.map((place) => placeRow(place, run.candidates)) },
    },
    select: { id: true, number: true },
  });
};
