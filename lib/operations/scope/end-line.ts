import { loadScopeLine, endScopeLine as saveEnd } from "@/lib/data/scope/scope-store";
import { eventOf } from "@/lib/domain/audit/define-event";
import { isoDay } from "@/lib/domain/calibration/due";
import { demand, Refused } from "@/lib/domain/refusal";
import { decideEnd } from "@/lib/domain/scope/decide-line";
import { scopeEvents } from "@/lib/domain/scope/events";
import { EndScopeLineInput } from "@/lib/domain/scope/schema";
import { defineOperation } from "../operation";

/** Its last day, once: a scope that was narrowed, widened or withdrawn. */
export const endScopeLine = defineOperation({
  name: "scope/end-line",
  permission: "scope.record",
  input: EndScopeLineInput,
  perform: async ({ now, tx }, { id, version, lastDay }) => {
    const line = await loadScopeLine(tx, id);
    if (!line) throw new Refused({ code: "not-found", message: "This line of the scope is not here." });
    demand(decideEnd(line, lastDay, isoDay(now)));
    await saveEnd(tx, id, version, lastDay);
    const { typeLetter, fromCelsius, toCelsius } = line;
    return {
      value: { id },
      events: [eventOf(scopeEvents.lineEnded, id, { typeLetter, fromCelsius, toCelsius, lastDay })],
    };
  },
});
