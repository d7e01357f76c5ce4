import { ok, type Result, refuse } from "../refusal";
import { demandBeforeStart } from "./decide-start";
import type { GatePlace } from "./plan";
import type { RecordBenchChecksInput } from "./schema";

/** Only of what stands in the load, and only before the run: afterwards the gate lies behind it. */
export const decideBenchChecks = (
  run: { readonly number: string; readonly state: string },
  places: readonly Pick<GatePlace, "channel" | "junction" | "junctionCelsius">[],
  input: RecordBenchChecksInput,
): Result<(junction: string) => number> => {
  const before = demandBeforeStart(run);
  if (!before.ok) return before;
  const fields: Record<string, string> = {};
  input.channels.forEach(({ channel }, at) => {
    if (!places.some((place) => place.channel === channel))
      fields[`channels.${at}.microvolt`] = `Channel ${channel} is not of this load.`;
  });
  const stated = new Map(places.map(({ junction, junctionCelsius }) => [junction, junctionCelsius ?? 0]));
  input.junctions.forEach(({ junction, thermometer, thermometerCelsius }, at) => {
    if (thermometerCelsius !== undefined && thermometer === "")
      fields[`junctions.${at}.thermometer`] = "Say with which thermometer.";
    if (!stated.has(junction))
      fields[`junctions.${at}.thermometerCelsius`] = `${junction} is no junction of this load.`;
  });
  if (Object.keys(fields).length > 0) return refuse("invalid", "Nothing was stored.", fields);
  return ok((junction) => stated.get(junction) ?? 0);
};
