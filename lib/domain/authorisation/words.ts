import type { Authorisation } from "./authorisation";

const celsius = (value: number): string => `${Number(value.toFixed(2))} °C`.replace("-", "−");

export const typesWords = (typeLetters: string): string => {
  if (typeLetters === "") return "every type";
  return `${typeLetters.length === 1 ? "type" : "types"} ${[...typeLetters].join(", ")}`;
};

export const rangeWords = ({
  fromCelsius,
  toCelsius,
}: Pick<Authorisation, "fromCelsius" | "toCelsius">): string =>
  `${celsius(fromCelsius)} to ${celsius(toCelsius)}`;

/** "types K, N, −50 °C to 1200 °C, inside the laboratory's scope, until 2026-12-31" */
export const authorisedFor = (held: Authorisation): string =>
  [
    typesWords(held.typeLetters),
    rangeWords(held),
    held.scope === "inside" ? "inside the laboratory’s scope only" : "inside and outside the scope",
    ...(held.procedureId === null ? [] : ["one procedure"]),
    ...(held.validUntil === null ? [] : [`until ${held.validUntil}`]),
  ].join(", ");
