import { insertScopeLine, loadScopeLines } from "@/lib/data/scope/scope-store";
import { lockName } from "@/lib/data/sql/lock-name";
import { eventOf } from "@/lib/domain/audit/define-event";
import { demand } from "@/lib/domain/refusal";
import { capabilityText } from "@/lib/domain/scope/capability-text";
import { decideScopeLine } from "@/lib/domain/scope/decide-line";
import { scopeEvents } from "@/lib/domain/scope/events";
import { ScopeLineInput } from "@/lib/domain/scope/schema";
import { defineOperation } from "../operation";

/** A line of the schedule of accreditation. Runs made from now on are held against it. */
export const recordScopeLine = defineOperation({
  name: "scope/record-line",
  permission: "scope.record",
  input: ScopeLineInput,
  perform: async ({ actor, now, tx }, input) => {
    await lockName(tx, "scope");
    const line = demand(decideScopeLine(input, await loadScopeLines(tx)));
    const { id } = await insertScopeLine(tx, line, {
      recordedById: actor.kind === "system" ? null : actor.personId,
      recordedAt: now,
    });
    const { typeLetter, fromCelsius, toCelsius, validFrom, source } = line;
    const capability = capabilityText(line.capability);
    return {
      value: { id },
      events: [
        eventOf(scopeEvents.lineRecorded, id, {
          typeLetter,
          fromCelsius,
          toCelsius,
          capability,
          validFrom,
          source,
        }),
      ],
    };
  },
});
