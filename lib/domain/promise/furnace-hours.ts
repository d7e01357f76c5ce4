import type { PromisePolicy } from "./policy";

export type PlannedFurnace = {
  readonly id: string;
  readonly tag: string;
  readonly name: string;
  readonly minimumCelsius: number;
  readonly maximumCelsius: number;
  readonly rampUpCelsiusPerHour: number | null;
  readonly rampDownCelsiusPerHour: number | null;
  /** Of its roomiest configuration. */
  readonly places: number;
};

/** Like sensors: the same setpoints, so many of them, each measured so often. */
export type PlannedGroup = {
  readonly setpointsCelsius: readonly number[];
  readonly sensors: number;
  /** Two sets of results are two measurements. */
  readonly sets: 1 | 2;
};

export type LoadHours = {
  /** Loading, heating and measuring: somebody is there. */
  readonly attended: number;
  readonly cooling: number;
};

/** In quarters of an hour, never less than it takes. */
const quarters = (hours: number): number => Math.ceil(hours * 4 - 1e-9) / 4;

export const reaches = (furnace: PlannedFurnace, { setpointsCelsius }: PlannedGroup): boolean =>
  setpointsCelsius.every((celsius) => celsius >= furnace.minimumCelsius && celsius <= furnace.maximumCelsius);

export const sensorsPerLoad = (furnace: PlannedFurnace, policy: PromisePolicy): number =>
  Math.max(1, furnace.places - policy.referencesPerLoad);

export const loadsOf = (group: PlannedGroup, furnace: PlannedFurnace, policy: PromisePolicy): number =>
  Math.ceil(group.sensors / sensorsPerLoad(furnace, policy)) * group.sets;

/** One load: in, up through its setpoints with a dwell at each, and down until it may be opened. */
export const loadHours = (
  { setpointsCelsius }: PlannedGroup,
  furnace: Pick<PlannedFurnace, "rampUpCelsiusPerHour" | "rampDownCelsiusPerHour">,
  policy: PromisePolicy,
): LoadHours => {
  const up = furnace.rampUpCelsiusPerHour ?? policy.rampUpCelsiusPerHour;
  const down = furnace.rampDownCelsiusPerHour ?? policy.rampDownCelsiusPerHour;
  const ascending = setpointsCelsius.toSorted((left, right) => left - right);
  const highest = ascending.at(-1) ?? policy.ambientCelsius;
  const heating = Math.max(0, highest - policy.ambientCelsius) / up;
  return {
    attended: quarters(policy.loadingHours + heating + policy.dwellHours * ascending.length),
    cooling: quarters(Math.max(0, highest - policy.openBelowCelsius) / down),
  };
};
