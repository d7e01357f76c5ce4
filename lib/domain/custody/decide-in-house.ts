import { ok, type Result, refuse } from "../refusal";

/** A sensor that by its log was sent to an external provider and never came back, and to whom. */
export type Away = { readonly tag: string; readonly withWhom: string };

/** "with an external provider" where its log names none. */
export const awayWords = (withWhom: string): string => `with ${withWhom || "an external provider"}`;

/** What is not in the house is not handed over: its log would say that it left twice. */
export const decideInHouse = (away: readonly Away[]): Result<null> =>
  away.length === 0
    ? ok(null)
    : refuse(
        "rule",
        `${away.map(({ tag, withWhom }) => `${tag} is ${awayWords(withWhom)}`).join(", ")}. Record on its page first that it came back. Nothing was changed.`,
      );
