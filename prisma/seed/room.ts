import { recordRoom } from "@/lib/operations/run/record-room";
import type { Cast } from "./people";
import type { Teller } from "./teller";

/** What the room's instrument showed at the start and at the end of a run (invented). */
const shown = { start: { celsius: 23.2, percent: 39.5 }, end: { celsius: 23.7, percent: 39.5 } } as const;

export const tellRoom = async (
  { tell, at }: Teller,
  { technician }: Cast,
  run: string,
  moment: keyof typeof shown,
  days: number,
): Promise<void> => {
  const when = at(days, moment === "start" ? "06:26" : "12:25");
  await tell(recordRoom, technician, when, { run, moment, instrument: "TH-01", ...shown[moment] });
};
