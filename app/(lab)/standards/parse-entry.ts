import { number, optionalNumber, optionalText, text } from "@/lib/web/form-fields";

const figure = (data: FormData, name: string): number => number(data, `figures.${name}`);
const word = (data: FormData, name: string): string => text(data, `figures.${name}`);

const checked = (data: FormData) => ({
  quantity: word(data, "quantity"),
  expected: figure(data, "expected"),
  found: figure(data, "found"),
  limit: figure(data, "limit"),
  unit: word(data, "unit"),
});

/** The figures of the kind the form was made for; the schema of that kind judges them. */
const parseFigures = (data: FormData): Record<string, unknown> => {
  const kind = word(data, "kind");
  switch (kind) {
    case "verification":
      return { kind, against: word(data, "against") };
    case "intermediate-check":
    case "check-after-anneal":
      return { kind, ...checked(data) };
    case "maintenance":
      return { kind, plan: word(data, "plan") };
    case "damage":
      return { kind, soundOn: optionalText(data, "figures.soundOn") };
    case "repair":
      return { kind, by: word(data, "by") };
    case "adjustment":
      return {
        kind,
        quantity: word(data, "quantity"),
        before: figure(data, "before"),
        after: figure(data, "after"),
        unit: word(data, "unit"),
      };
    case "anneal":
      return {
        kind,
        method: word(data, "method"),
        celsius: figure(data, "celsius"),
        hours: figure(data, "hours"),
        thenCelsius: optionalNumber(data, "figures.thenCelsius"),
        thenHours: optionalNumber(data, "figures.thenHours"),
      };
    case "move":
      return { kind, to: word(data, "to") };
    default:
      return { kind };
  }
};

type Uploaded = { readonly fileName: string; readonly bytes: Uint8Array } | null;

/** An entry of the logbook as typed, with its file if one came. */
export const parseEntry = (data: FormData, document: Uploaded): Record<string, unknown> => ({
  id: text(data, "id"),
  happenedOn: text(data, "happenedOn"),
  outcome: optionalText(data, "outcome"),
  summary: text(data, "summary"),
  figures: parseFigures(data),
  ...(document ? { document } : {}),
});
