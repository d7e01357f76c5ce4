import { loadScopeLines } from "@/lib/data/scope/scope-store";
import { isoDay } from "@/lib/domain/calibration/due";
import { capabilityCurve, capabilityRows } from "@/lib/domain/scope/capability-curve";
import { capabilityText } from "@/lib/domain/scope/capability-text";
import { isInForce, type StoredScopeLine } from "@/lib/domain/scope/line";
import type { Actor } from "@/lib/domain/staff/actor";
import { may } from "@/lib/domain/staff/permissions";
import { answer } from "./view";

const standingOf = (line: StoredScopeLine, day: string): "in-force" | "to-come" | "ended" =>
  isInForce(line, day) ? "in-force" : line.validFrom > day ? "to-come" : "ended";

/** As many decimals in every row, so that the figures stand under each other. */
const plain = (value: number): string => value.toFixed(3);

/** One type: its lines in force on the day, with what its drawing and its table show. */
const typeOf = (typeLetter: string, lines: readonly StoredScopeLine[]) => ({
  typeLetter,
  plot: {
    title: `Capability for type ${typeLetter}`,
    lines: lines.map((line) => ({ points: capabilityCurve(line) })),
    rows: lines.flatMap((line) =>
      capabilityRows(line).map(({ celsius, expandedCelsius }) => ({
        celsius: String(celsius),
        expandedCelsius: plain(expandedCelsius),
        source: line.source,
      })),
    ),
  },
});

/** The laboratory's scope as of a day: drawn by type, and every line there ever was. */
export const scopeView = (actor: Actor, day: string, now: Date) =>
  answer(actor, "laboratory.read", async (tx) => {
    const lines = await loadScopeLines(tx);
    const inForce = lines.filter((line) => isInForce(line, day));
    const letters = [...new Set(inForce.map(({ typeLetter }) => typeLetter))].toSorted();
    return {
      day,
      isToday: day === isoDay(now),
      mayRecord: actor.kind === "staff" && may(actor.roles, "scope.record"),
      types: letters.map((letter) =>
        typeOf(
          letter,
          inForce.filter(({ typeLetter }) => typeLetter === letter),
        ),
      ),
      lines: lines.map(({ recordedAt, capability, ...line }) => ({
        ...line,
        capability: capabilityText(capability),
        standing: standingOf(line as StoredScopeLine, day),
        recordedAt: recordedAt.toISOString(),
      })),
    };
  });

export type ScopeView = Awaited<ReturnType<typeof scopeView>>;
