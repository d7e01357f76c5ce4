import type { FormState } from "@/lib/web/form-state";

const ofAnswers = /^(?:question\.)?choices(?:\.(\d+))?(?:\.|$)/;

/** The answers offered are judged one by one and typed in one field: whatever is said of one of them stands there. */
export const atShownFields = (state: FormState): FormState => {
  if (state.status !== "refused") return state;
  const shown = Object.entries(state.fields).map(([name, message]): [string, string] => {
    const found = ofAnswers.exec(name);
    if (!found) return [name, message];
    return ["choices", found[1] === undefined ? message : `Answer ${Number(found[1]) + 1}: ${message}`];
  });
  return { ...state, fields: Object.fromEntries(shown) };
};
