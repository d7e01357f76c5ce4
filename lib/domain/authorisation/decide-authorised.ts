import { ok, type Result, refuse } from "../refusal";
import { type Activity, type Authorisation, authorisationState } from "./authorisation";

/** What one certificate, or one opinion, asks of whoever answers for it. */
export type Asked = {
  readonly activity: Activity;
  /** How the sentence names it: the sensor's tag. */
  readonly subject: string;
  readonly typeLetters: readonly string[];
  /** Nominal temperatures of its results, °C. */
  readonly nominalCelsius: readonly number[];
  /** Whether any of its results lies outside the laboratory's scope. */
  readonly hasOutsideScope: boolean;
  readonly procedureIds: readonly string[];
};

const verbs: Readonly<Record<Activity, string>> = {
  "sign-off": "sign off",
  opinion: "state opinions on",
};
const celsius = (value: number): string => `${Number(value.toFixed(2))} °C`.replace("-", "−");
const each = (values: readonly string[]): string => [...new Set(values)].toSorted().join(", ");

const notInForce = (held: readonly Authorisation[], at: Date): string => {
  const states = held.map((one) => ({ one, state: authorisationState(one, at) }));
  const ended = states.filter(({ state }) => state === "ended").map(({ one }) => one.validUntil ?? "");
  const last = ended.toSorted().at(-1);
  if (last) return `your authorisation ended on ${last}`;
  if (states.some(({ state }) => state === "withdrawn")) return "your authorisation was withdrawn";
  const first = held.map(({ validFrom }) => validFrom).toSorted()[0] ?? "";
  return `your authorisation begins on ${first}`;
};

/** Each in turn narrows what is held; the first that leaves none names what is missing. */
const demands = (
  asked: Asked,
): readonly {
  readonly covers: (held: Authorisation) => boolean;
  readonly lacking: (held: readonly Authorisation[]) => string;
}[] => [
  {
    covers: ({ typeLetters }) =>
      typeLetters === "" || asked.typeLetters.every((one) => typeLetters.includes(one)),
    lacking: (held) =>
      `it is of type ${each(asked.typeLetters)}, and your authorisation is for ${each(held.flatMap(({ typeLetters }) => [...typeLetters]))}`,
  },
  {
    covers: ({ procedureId }) =>
      procedureId === null || asked.procedureIds.every((one) => one === procedureId),
    lacking: () => "it was measured by a procedure that your authorisation does not name",
  },
  {
    covers: ({ fromCelsius, toCelsius }) =>
      asked.nominalCelsius.every((one) => one >= fromCelsius && one <= toCelsius),
    lacking: (held) =>
      `its results reach from ${celsius(Math.min(...asked.nominalCelsius))} to ${celsius(Math.max(...asked.nominalCelsius))}, and your authorisation is for ${held
        .map((one) => `${celsius(one.fromCelsius)} to ${celsius(one.toCelsius)}`)
        .join(" or ")}`,
  },
  {
    covers: ({ scope }) => scope === "any" || !asked.hasOutsideScope,
    lacking: () =>
      "a result lies outside the laboratory's scope, and your authorisation is for results inside it only",
  },
];

/**
 * The authorisation by which somebody may do this at this moment: one that covers all of it. The refusal names what is
 * missing. ISO/IEC 17025 6.2.6.
 */
export const decideAuthorised = (
  authorisations: readonly Authorisation[],
  asked: Asked,
  at: Date,
): Result<Authorisation> => {
  const refused = (why: string) =>
    refuse(
      "rule",
      `You may not ${verbs[asked.activity]} ${asked.subject}: ${why}. Nothing was ${asked.activity === "sign-off" ? "signed" : "written"}; a quality manager grants authorisations at “Staff”.`,
    );
  const ofActivity = authorisations.filter(({ activity }) => activity === asked.activity);
  if (ofActivity.length === 0) return refused("you hold no authorisation for it");
  let held = ofActivity.filter((one) => authorisationState(one, at) === "in-force");
  if (held.length === 0) return refused(notInForce(ofActivity, at));
  for (const { covers, lacking } of demands(asked)) {
    const left = held.filter(covers);
    if (left.length === 0) return refused(lacking(held));
    held = left;
  }
  const [first] = held;
  return first ? ok(first) : refused("you hold no authorisation for it");
};
