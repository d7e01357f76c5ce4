"use server";
import { policyTypes } from "@/lib/domain/intake/policy";
import { changeIntakePolicy } from "@/lib/operations/intake/change-policy";
import { formAction } from "@/lib/web/form-action";
import { number, text } from "@/lib/web/form-fields";
import type { FormState } from "@/lib/web/form-state";

const change = formAction(changeIntakePolicy, {
  parse: (data) => ({
    version: number(data, "version"),
    insulationNew: text(data, "insulationNew"),
    insulationUsed: text(data, "insulationUsed"),
    insulationNotKnown: text(data, "insulationNotKnown"),
    loopTolerancePercent: text(data, "loopTolerancePercent"),
    largestLoopOhm: text(data, "largestLoopOhm"),
    resistivity: Object.fromEntries(policyTypes.map((type) => [type, text(data, `resistivity.${type}`)])),
    reason: text(data, "reason"),
  }),
  done: () => "The limits hold for sensors taken in from now on.",
});

export const changeIntakePolicyAction = async (state: FormState, data: FormData) => change(state, data);
