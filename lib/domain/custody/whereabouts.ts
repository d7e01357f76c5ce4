import type { CustodyKind } from "./labels";

export type CustodyLine = {
  readonly kind: CustodyKind;
  readonly place: string;
  readonly fromWhom: string;
  readonly toWhom: string;
  readonly condition: string;
  readonly at: string;
  readonly by: string;
};

/** Where it is after a line, in the words of the storage list and of the sensor's page. */
export const whereabouts = ({
  kind,
  place,
  toWhom,
  fromWhom,
}: Omit<CustodyLine, "at" | "by" | "condition">): string => {
  const places: Readonly<Record<CustodyKind, string>> = {
    received: "at the desk",
    stored: `in ${place}`,
    "to-furnace": `at the furnace, ${toWhom}`,
    "from-furnace": `at the bench, out of ${fromWhom || "the furnace"}`,
    "to-provider": `with ${toWhom}`,
    "from-provider": "at the desk, back from a provider",
    packed: "packed",
    "handed-over": `handed over to ${toWhom || "the customer"}`,
    disposed: "disposed of",
  };
  return places[kind];
};
