/** Why a point cannot be done whatever is calibrated and characterised: the review refuses it, so it is told once. */
export const noFurnaceReaches = "No furnace of the laboratory reaches this temperature.";

/** What the platform answers of a point: of `elsewhere` nothing follows from what stands here. */
export type PossiblePoint = {
  readonly position: number;
  readonly setpoint: string;
  readonly can: "yes" | "no" | "elsewhere";
  readonly why: string;
};

type NotDone = {
  readonly position: number;
  readonly setpoints: readonly string[];
  readonly why: string;
};

/** Points that cannot be done here as it stands, those of a line for the same reason together. */
export const notDone = (points: readonly PossiblePoint[]): readonly NotDone[] => {
  const found = new Map<string, NotDone>();
  for (const { position, setpoint, can, why } of points) {
    if (can !== "no") continue;
    const key = `${position} ${why}`;
    found.set(key, { position, why, setpoints: [...(found.get(key)?.setpoints ?? []), setpoint] });
  }
  return [...found.values()];
};

/** What would bring the point back within what is done, in the order of what asks least of the customer. */
export const waysOut =
  "Another setpoint, a provider the line is subcontracted to, or an order without the point would do.";

/** Told before the order is accepted (ISO/IEC 17025:2017, 7.1.1 b): nobody learns it from a run that cannot be planned. */
export const notDoneNotices = (points: readonly PossiblePoint[]): readonly string[] =>
  notDone(points)
    .filter(({ why }) => why !== noFurnaceReaches)
    .map(
      ({ position, setpoints, why }) =>
        `Line ${position}: ${setpoints.join(", ")} cannot be done as things stand. ${why} ${waysOut}`,
    );
