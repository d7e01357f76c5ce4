import { isoDay } from "@/lib/domain/calibration/due";
import type { CapabilitySources } from "@/lib/domain/order/capability";
import { readBudgetInputs } from "@/lib/domain/run/budget-inputs";
import { scopeInForce } from "@/lib/domain/scope/scope-in-force";
import type { Tx } from "../in-scope";
import { loadCurrentRevision } from "../procedure/procedure-store";
import { loadBenches } from "../run/load-benches";
import { loadScopeLines } from "../scope/scope-store";
import { furnaceRanges } from "./furnace-ranges";

/** What the laboratory has today: furnaces, characterisations, standards, its procedure's figures, its scope. */
export const capabilitySources = async (tx: Tx, now: Date): Promise<CapabilitySources> => {
  const procedure = await loadCurrentRevision(tx, "tube-furnace");
  return {
    benches: procedure ? await loadBenches(tx, readBudgetInputs(procedure.budgetInputs), now) : [],
    furnaces: await furnaceRanges(tx),
    scope: scopeInForce(await loadScopeLines(tx), { day: isoDay(now), moment: now }),
  };
};
