import { ok, type Result, refuse } from "../refusal";

type Received = {
  readonly tag: string;
  /** YYYY-MM-DD */
  readonly receivedOn: string;
};

/** A day begins in the zone furthest east 14 h before it does in UTC: earlier it is that day nowhere. */
const zoneHours = 14;

/**
 * No sensor is measured before it came: its certificate states both days (ISO/IEC 17025:2017, 7.8.2.1 h and i). The
 * recorder's clock or its zone is wrong, or it is another sensor; to mark it and go on would print the wrong day.
 */
export const decideReceivedBefore = (startedAt: Date, sensors: readonly Received[]): Result<null> => {
  const early = sensors.filter(
    ({ receivedOn }) => startedAt.getTime() < Date.parse(`${receivedOn}T00:00:00Z`) - zoneHours * 3_600_000,
  );
  if (early.length === 0) return ok(null);
  const words = early.map(({ tag, receivedOn }) => `${tag} on ${receivedOn}`).join(", ");
  return refuse(
    "rule",
    `The run’s first reading would lie at ${startedAt.toISOString()}, but received were: ${words}. Check the recorder’s clock, its time zone and the beginning that was typed, and whether these are the sensors that were in the furnace. Nothing was stored.`,
  );
};
