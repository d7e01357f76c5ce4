import type { z } from "zod";
import type { EntryInput } from "@/lib/domain/equipment/schema";
import { recordEntry } from "@/lib/operations/equipment/record-entry";
import type { Cast } from "./people";
import type { Teller } from "./teller";

/** The difference found at each check of the demonstration, °C: INVENTED, one every fortnight, the last ones a little low. */
const differences = [
  0.04, -0.06, 0.09, -0.02, 0.05, -0.08, 0.02, 0.07, -0.04, 0.01, -0.07, 0.06, 0.03, -0.05, 0.08, -0.01, 0.04,
  -0.09, 0.02, 0.05, -0.03, -0.06, 0.01, -0.08,
];

const quantity = "REF-S-02 against REF-S-01 at 1000 °C, in the bare tube";

type Entry = Pick<z.input<typeof EntryInput>, "summary" | "figures">;

/** What was done with the references in the year: checked against one another, annealed, and checked after that. */
export const tellChecks = async (
  { tell, at, day }: Teller,
  { technician }: Cast,
  ids: { readonly compared: string; readonly annealed: string },
): Promise<void> => {
  const write = (id: string, days: number, entry: Entry) =>
    tell(recordEntry, technician, at(days, "15:30"), { id, happenedOn: day(days), ...entry });
  const check = (found: number) => ({ quantity, expected: 0, found, limit: 0.5, unit: "°C" as const });
  for (const [index, found] of differences.entries()) {
    const days = 340 - 14 * index;
    const summary = "Both references read at 1000 °C, ten minutes (invented).";
    const figures = { kind: "intermediate-check" as const, ...check(found) };
    await write(ids.compared, days, { summary, figures });
    if (index % 6 === 0) await write(ids.annealed, days, { summary, figures });
  }
  await write(ids.annealed, 64, {
    summary: "Annealed at full immersion after a year of use (invented).",
    figures: {
      kind: "anneal",
      method: "furnace",
      celsius: 1100,
      hours: 1,
      thenCelsius: 450,
      thenHours: 16,
    },
  });
  await write(ids.annealed, 62, {
    summary: "Read again beside the other reference (invented).",
    figures: { kind: "check-after-anneal", ...check(0.02) },
  });
};
