import type { LogEntry } from "@/lib/domain/equipment/logbook";

const signed = (value: number): string => String(Number(value.toPrecision(6))).replace("-", "−");

/** The figures of an entry as a person reads them. */
export const entryFacts = ({ figures }: LogEntry): string => {
  switch (figures.kind) {
    case "verification":
      return figures.against === undefined ? "" : `against ${figures.against}`;
    case "intermediate-check":
    case "check-after-anneal":
      return figures.quantity === undefined
        ? ""
        : `${figures.quantity}: found ${signed(figures.found)} ${figures.unit}, expected ${signed(figures.expected)} ± ${figures.limit} ${figures.unit}`;
    case "maintenance":
      return figures.plan ?? "";
    case "damage":
      return figures.soundOn ? `sound on ${figures.soundOn}` : "";
    case "repair":
      return figures.by ? `by ${figures.by}` : "";
    case "adjustment":
      return figures.quantity === undefined
        ? ""
        : `${figures.quantity}: ${signed(figures.before)} to ${signed(figures.after)} ${figures.unit}`;
    case "anneal":
      return figures.celsius === undefined
        ? ""
        : `${figures.method}, ${figures.celsius} °C for ${figures.hours} h${
            figures.thenCelsius && figures.thenHours
              ? `, then ${figures.thenCelsius} °C for ${figures.thenHours} h`
              : ""
          }`;
    case "move":
      return figures.to ? `to ${figures.to}` : "";
    default:
      return "";
  }
};
