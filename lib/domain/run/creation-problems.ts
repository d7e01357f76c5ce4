import { characterisationInDate } from "../gate/equipment/characterisation-in-date";
import type { Found } from "../gate/finding";
import { channelTwice } from "../gate/load/channel-twice";
import { itemTwice } from "../gate/load/item-twice";
import { junctionTemperature } from "../gate/load/junction-temperature";
import { placeTwice } from "../gate/load/place-twice";
import { tooManyPlaces } from "../gate/load/too-many-places";
import { whoIsThere } from "../gate/load/who-is-there";
import { oxidisesInAir } from "../gate/materials/oxidises-in-air";
import { platinumUnsheathed } from "../gate/materials/platinum-unsheathed";
import { doneHere } from "../gate/metal/done-here";
import { orderAccepted } from "../gate/metal/order-accepted";
import type { GatePlace } from "../gate/plan";
import { furnaceRange } from "../gate/range/furnace-range";
import { referenceRange } from "../gate/range/reference-range";
import { typeRange } from "../gate/range/type-range";
import { exposure } from "../gate/setpoints/exposure";
import type { LoadCandidates } from "./load-candidates";
import type { CreateRunInput } from "./schema";

const gatePlace = (row: CreateRunInput["places"][number], candidates: LoadCandidates): GatePlace => {
  const { item } = row;
  const tag = item.kind === "shorted" ? null : item.tag;
  const known = item.kind === "sensor" ? candidates.sensors : candidates.references;
  const junction = candidates.junctions.find(({ id }) => id === row.junctionId);
  return {
    place: row.place,
    channel: row.channel,
    kind: item.kind,
    tag,
    type: known.find((one) => one.tag === tag)?.type ?? null,
    junction: row.junctionId,
    junctionCelsius: row.junctionCelsius ?? junction?.celsius ?? null,
    immersionMillimetre: row.immersionMillimetre ?? null,
  };
};

const fieldOf = (found: Found, input: CreateRunInput): string => {
  const row = input.places.findIndex(({ item }) => item.kind !== "shorted" && item.tag === found.subject);
  switch (found.code) {
    case "place-twice":
      return `places.${found.at}.place`;
    case "channel-twice":
      return `places.${found.at}.channel`;
    case "item-twice":
      return `places.${found.at}.item`;
    case "junction-temperature":
      return `places.${found.at}.junctionCelsius`;
    case "platinum-unsheathed":
    case "oxidises-in-air":
    case "order-not-accepted":
    case "subcontracted":
      return `places.${row}.item`;
    case "characterisation-in-date":
      return "configurationId";
    case "too-many-places":
    case "no-sensor":
    case "no-reference":
      return "places";
    default:
      return "setpoints";
  }
};

/** Rows whose reason names a place or the whole run need no subject before it. */
const namesItself = new Set(["place-twice", "channel-twice", "junction-temperature"]);

const messageOf = ({ code, subject, reason, remedy }: Found): string =>
  `${subject === "" || namesItself.has(code) ? "" : `${subject}: `}${reason} ${remedy}`;

/**
 * The rules of the gate that no waiting mends, asked already while the run is planned: each where the form shows it.
 * The gate asks them again, and the others, on the day.
 */
export const creationProblems = (
  input: CreateRunInput,
  candidates: LoadCandidates,
  setpointsCelsius: readonly number[],
  day: string,
): readonly { readonly field: string; readonly code: string; readonly message: string }[] => {
  const { configuration, sensors, references } = candidates;
  const places = input.places.map((row) => gatePlace(row, candidates));
  const facts = { day, places, sensors, references, setpointsCelsius };
  const found: readonly Found[] = [
    ...(configuration ? characterisationInDate.assess({ ...facts, configuration }) : []),
    ...channelTwice.assess(facts),
    ...placeTwice.assess(facts),
    ...itemTwice.assess(facts),
    ...junctionTemperature.assess(facts),
    ...(configuration ? tooManyPlaces.assess({ ...facts, configuration }) : []),
    ...whoIsThere.assess(facts),
    ...orderAccepted.assess(facts),
    ...doneHere.assess(facts),
    ...oxidisesInAir.assess(facts),
    ...platinumUnsheathed.assess({
      ...facts,
      configuration: { kind: configuration?.kind ?? "bare-tube" },
    }),
    ...exposure.assess(facts),
    ...(configuration ? furnaceRange.assess({ ...facts, configuration }) : []),
    ...referenceRange.assess(facts),
    ...typeRange.assess(facts),
  ];
  return found.map((one) => ({ field: fieldOf(one, input), code: one.code, message: messageOf(one) }));
};
