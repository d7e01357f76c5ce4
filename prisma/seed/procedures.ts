import type { BudgetInputsInput } from "@/lib/domain/run/budget-inputs";
import { changeDraft } from "@/lib/operations/procedure/change-draft";
import { draftRevision } from "@/lib/operations/procedure/draft-revision";
import { makeCurrent } from "@/lib/operations/procedure/make-current";
import { recordProcedure } from "@/lib/operations/procedure/record";
import { absent, correlation, inputs, sensorInputs } from "@/lib/station/simulation/scenario";
import type { Cast } from "./people";
import type { Teller } from "./teller";

/** What the simulated run follows: its readings have no heater, so some lines of a real furnace are absent. */
export const demoProcedure = "simulated-furnace";

const budget: BudgetInputsInput = {
  procedure: "as the record names it",
  origin: "simulated",
  source: "Readings from a seeded generator with known truth; people, companies and figures are invented.",
  referenceRepeatability: inputs.referenceRepeatability,
  heaterPickup: absent.line,
  stability: absent.line,
  correlation,
  sensors: {
    K: { ...sensorInputs("K"), ...absent.sensor },
    N: { ...sensorInputs("N"), ...absent.sensor },
    S: { ...sensorInputs("S"), ...absent.sensor },
  },
};

/** A procedure of the laboratory's own, approved by a second person; and the next revision of another, still a draft. */
export const tellProcedures = async ({ tell, at }: Teller, { manager, signatory }: Cast): Promise<void> => {
  const { id } = await tell(recordProcedure, manager, at(290), {
    key: demoProcedure,
    title: "Comparison in a simulated tube furnace",
    copyOf: "tube-furnace",
  });
  await tell(changeDraft, manager, at(289), {
    id,
    version: 1,
    budgetText: JSON.stringify(budget),
    change: "First revision: the lines of the simulated furnace. Invented.",
    verification:
      "1 000 simulated furnaces whose errors are drawn from this budget: U holds the truth in about 95 % of them (npm run soak). Invented laboratory.",
  });
  await tell(makeCurrent, signatory, at(288), { id, version: 2 });
  const next = await tell(draftRevision, manager, at(20), { key: "tube-furnace" });
  await tell(changeDraft, manager, at(20), {
    id: next.id,
    version: 1,
    change: "Repeatability of base metal from the laboratory's own pooled series, to be entered. Invented.",
  });
};
