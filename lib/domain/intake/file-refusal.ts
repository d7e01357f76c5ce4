import type { Refusal } from "../refusal";

const mostShown = 50;

/** All that is wrong with a list, one message a cell, as fields `problems.N` of the form; the file is chosen again. */
export const listRefusal = (problems: readonly string[]): Refusal => {
  const more = problems.length - mostShown;
  const shown = problems.slice(0, mostShown);
  return {
    code: "invalid",
    message: `The list is not taken in: ${problems.length} ${
      problems.length === 1 ? "place needs" : "places need"
    } mending. Nothing was stored. Mend the file and choose it again.`,
    fields: Object.fromEntries(
      (more > 0 ? [...shown, `and ${more} more.`] : shown).map((text, index) => [`problems.${index}`, text]),
    ),
  };
};
