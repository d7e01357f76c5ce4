import { ok, type Result, refuse } from "../refusal";
import type { BlockDraft } from "./place-block";
import type { TypedReading } from "./schema";

/** Typed readings by channel, in the order of their times. `channels` are those of the furnace load. */
export const typedBlock = (
  readings: readonly TypedReading[],
  channels: readonly string[],
): Result<BlockDraft> => {
  const fields: Record<string, string> = {};
  const rows = new Map<string, TypedReading[]>();
  for (const [index, reading] of readings.entries()) {
    if (!channels.includes(reading.channel))
      fields[`first.${index}.channel`] =
        `Channel ${reading.channel} is not in this run's furnace load (${channels.join(", ")}).`;
    const earlier = rows.get(reading.channel) ?? [];
    const last = earlier.at(-1);
    if (last && reading.seconds <= last.seconds)
      fields[`first.${index}.seconds`] =
        `Channel ${reading.channel} was read at ${last.seconds} s before. Each reading of a channel is later than the one before.`;
    rows.set(reading.channel, [...earlier, reading]);
  }
  if (Object.keys(fields).length > 0)
    return refuse("invalid", "Some readings need another look. Nothing was stored.", fields);
  return ok({
    clock: "seconds",
    channels: [...rows].map(([channel, own]) => ({
      channel,
      times: Float64Array.from(own, ({ seconds }) => seconds),
      microvolts: Float64Array.from(own, ({ microvolts }) => microvolts),
      polarity: Int8Array.from(own, ({ polarity }) => polarity),
    })),
  });
};
