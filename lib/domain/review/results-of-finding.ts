import type { EvidenceFinding } from "../evidence/evaluation";
import type { EvidenceHead } from "./evidence-head";
import type { ResultName } from "./result-name";

/** What paths and words of a finding point at, in the order of the evidence. */
export type FindingPlaces = Pick<EvidenceHead, "sensors" | "setpoints" | "windows" | "load"> & {
  readonly junctions: readonly { readonly id: string }[];
};

const indexIn = (path: string, list: string): number => {
  const [, digits] = new RegExp(`^${list}\\[(\\d+)\\]`).exec(path) ?? [];
  return digits === undefined ? -1 : Number(digits);
};

/** `word` followed by the id, whole: "setpoint SP1" is not in "setpoint SP12". */
const says = (message: string, word: string, id: string): boolean =>
  message
    .toLowerCase()
    .split(`${word} ${id.toLowerCase()}`)
    .slice(1)
    .some((after) => !/^([\w-]|\.\d)/.test(after));

const allOf = <T>(found: readonly T[]): ReadonlySet<T> | null => (found.length > 0 ? new Set(found) : null);

/** Of a swap both channels are in the words, with what hangs on each. */
const onChannelsNamed = (message: string, { load }: FindingPlaces): FindingPlaces["load"] =>
  load.filter(({ channel }) => message.includes(`channel ${channel} (`));

/** By where in the file it is, else by what it says; null = all of them. */
const sensorsOf = ({ path, message }: EvidenceFinding, at: FindingPlaces): ReadonlySet<string> | null => {
  const place = at.load[indexIn(path, "load")];
  const junction = at.junctions[indexIn(path, "junctions")];
  const places = [
    ...(place ? [place] : []),
    ...onChannelsNamed(message, at),
    ...at.load.filter((one) => junction && one.junction === junction.id),
  ];
  // A reference stands beside every sensor, and so does a shorted channel.
  if (places.some(({ item }) => item.kind !== "sensor") && !junction) return null;
  const own = at.sensors[indexIn(path, "sensors")];
  const named = [
    ...places.flatMap(({ item }) => (item.kind === "sensor" ? (item.id ?? []) : [])),
    ...(own ? [own.id] : []),
  ];
  if (named.length > 0) return new Set(named);
  return allOf(at.sensors.map(({ id }) => id).filter((id) => says(message, "sensor", id)));
};

/** Channels that are swapped are so at every setpoint, wherever it was seen first. */
const setpointsOf = (
  { code, path, message }: EvidenceFinding,
  at: FindingPlaces,
): ReadonlySet<string> | null => {
  if (code === "swapped-channels") return null;
  const setpoint =
    at.setpoints[indexIn(path, "setpoints")]?.id ?? at.windows[indexIn(path, "windows")]?.setpoint;
  if (setpoint !== undefined) return new Set([setpoint]);
  return allOf(at.setpoints.map(({ id }) => id).filter((id) => says(message, "setpoint", id)));
};

/** The results that a finding speaks of; what is said of the whole run, or of what stands beside all, speaks of all. */
export const resultsOfFinding = (
  finding: EvidenceFinding,
  at: FindingPlaces,
  results: readonly ResultName[],
): readonly ResultName[] => {
  const sensors = sensorsOf(finding, at);
  const setpoints = setpointsOf(finding, at);
  const spoken = results.filter(
    ({ sensor, setpoint }) => (sensors?.has(sensor) ?? true) && (setpoints?.has(setpoint) ?? true),
  );
  return spoken.length > 0 ? spoken : results;
};
