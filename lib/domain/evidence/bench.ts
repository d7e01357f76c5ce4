import type { ReferenceFunction } from "@/lib/metrology/thermocouple/reference-function";
import { referenceFunctions } from "@/lib/metrology/thermocouple/reference-functions";
import type {
  ChannelReadings,
  Evidence,
  JunctionEvidence,
  LoadPlace,
  ReferenceEvidence,
  SensorEvidence,
} from "./schema";

type Infer<Schema extends { readonly _zod: { readonly output: unknown } }> = Schema["_zod"]["output"];

export type Sensor = Infer<typeof SensorEvidence>;
export type Reference = Infer<typeof ReferenceEvidence>;
export type Place = Infer<typeof LoadPlace>;
export type Junction = Infer<typeof JunctionEvidence>;
export type Readings = Infer<typeof ChannelReadings>;

/** A thing in the furnace with all that its readings pass through, and where each stands in the file. */
export type Mounted<Item> = {
  readonly item: Item;
  readonly itemPath: string;
  readonly place: Place;
  readonly placePath: string;
  readonly junction: Junction;
  readonly readings: Readings | undefined;
  readonly readingsPath: string;
  readonly reference: ReferenceFunction;
};

export type Bench = {
  readonly sensors: readonly Mounted<Sensor>[];
  readonly references: readonly Mounted<Reference>[];
};

/** What the bench is read from: evidence, or what a run holds of it so far. */
export type BenchInput = Pick<Evidence, "sensors" | "references" | "load" | "junctions" | "scans">;

/** Resolves the ids of checked evidence; what does not resolve is left out (checkIdentities has said so). */
export function mountBench(input: BenchInput): Bench {
  return {
    sensors: mountAll(input, input.sensors, "sensor", "sensors"),
    references: mountAll(input, input.references, "reference", "references"),
  };
}

function mountAll<Item extends Sensor | Reference>(
  input: BenchInput,
  items: readonly Item[],
  kind: "sensor" | "reference",
  listPath: string,
): Mounted<Item>[] {
  return items.flatMap((item, index) => {
    const placeIndex = input.load.findIndex((p) => p.item.kind === kind && p.item.id === item.id);
    const place = input.load[placeIndex];
    const junction = input.junctions.find((j) => j.id === place?.junction);
    if (!place || !junction) return [];
    const channelIndex = input.scans.channels.findIndex((c) => c.channel === place.channel);
    return [
      {
        item,
        itemPath: `${listPath}[${index}]`,
        place,
        placePath: `load[${placeIndex}]`,
        junction,
        readings: input.scans.channels[channelIndex],
        readingsPath: channelIndex < 0 ? `load[${placeIndex}].channel` : `scans.channels[${channelIndex}]`,
        reference: referenceFunctions[item.type],
      },
    ];
  });
}
