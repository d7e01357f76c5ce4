import { capabilityGap } from "../evidence/capability";
import { ok, type Result, refuse } from "../refusal";
import type { StoredScopeLine } from "./line";
import type { ScopeLineInput } from "./schema";

const nothing = "The line was not recorded. What you typed is still here.";

type Placed = Pick<StoredScopeLine, "typeLetter" | "fromCelsius" | "toCelsius" | "validFrom" | "validUntil">;

/** Two lines that only meet at one temperature do not overlap; two that share a day do. */
const overlap = (one: Placed, other: Placed): boolean =>
  one.typeLetter === other.typeLetter &&
  one.fromCelsius < other.toCelsius &&
  other.fromCelsius < one.toCelsius &&
  (other.validUntil === null || one.validFrom <= other.validUntil) &&
  (one.validUntil === null || other.validFrom <= one.validUntil);

/** A line covers its whole range, and one temperature of a type has one capability on any day. */
export const decideScopeLine = (
  line: ScopeLineInput,
  recorded: readonly StoredScopeLine[],
): Result<ScopeLineInput> => {
  const gap = capabilityGap(line.capability, line.fromCelsius, line.toCelsius);
  if (gap)
    return refuse("rule", nothing, {
      [line.capability.kind === "table" ? "capability.points" : "capability.kind"]:
        `It does not hold from ${line.fromCelsius} to ${line.toCelsius} °C: ${gap}. Correct the range or the figures.`,
    });
  const other = recorded.find((one) => overlap(line, one));
  if (other)
    return refuse("rule", nothing, {
      fromCelsius: `Type ${other.typeLetter} has a line from ${other.fromCelsius} to ${other.toCelsius} °C from ${other.validFrom} on (${other.source}). End it first, or choose a range beside it.`,
    });
  return ok(line);
};

/** A line ends today at the earliest: what was measured under it stays as it was. */
export const decideEnd = (line: StoredScopeLine, lastDay: string, today: string): Result<string> => {
  if (line.validUntil !== null)
    return refuse("wrong-state", `This line ends on ${line.validUntil} already; it is never changed.`);
  if (lastDay < today)
    return refuse("rule", "The line was not ended.", {
      lastDay: `Today at the earliest (${today}): results measured until now rest on it. Take those up as nonconforming work.`,
    });
  if (lastDay < line.validFrom)
    return refuse("rule", "The line was not ended.", {
      lastDay: `It begins on ${line.validFrom}; its last day is no earlier.`,
    });
  return ok(lastDay);
};
