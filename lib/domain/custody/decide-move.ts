import { ok, type Result, refuse } from "../refusal";
import { type CustodyKind, isInHouse } from "./labels";

type Moved = {
  readonly tag: string;
  /** The last line of its log; null: none was ever written. */
  readonly last: CustodyKind | null;
  /** Handed back to the customer. */
  readonly isGone: boolean;
  /** Whom its order line is subcontracted to; left out or null: nobody. */
  readonly provider?: string | null;
};

export type Move = "stored" | "from-furnace" | "to-provider" | "from-provider";

/** Whether all of these can go this way now: a thing that is not here is not put on a shelf. */
export const decideMove = (
  sensors: readonly Moved[],
  asked: readonly string[],
  move: { readonly kind: Move; readonly place: { readonly active: boolean } | null; readonly whom: string },
): Result<null> => {
  const unknown = asked.filter((tag) => !sensors.some((sensor) => sensor.tag === tag));
  if (unknown.length > 0)
    return refuse("invalid", "Nothing was stored; what was scanned is still here.", {
      tags: `No sensor of the laboratory: ${unknown.join(", ")}.`,
    });
  if (move.kind === "stored" && !move.place?.active)
    return refuse("invalid", "Nothing was stored; what was scanned is still here.", {
      placeCode: "Scan or choose a storage place that is in use.",
    });
  if ((move.kind === "to-provider" || move.kind === "from-provider") && move.whom === "")
    return refuse("invalid", "Nothing was stored; what was scanned is still here.", {
      whom: "Write the provider's name.",
    });
  const theirs = sensors.filter(({ provider }) => provider && provider !== move.whom);
  if (move.kind === "to-provider" && theirs.length > 0)
    return refuse("rule", "Nothing was stored; what was scanned is still here.", {
      whom: `By its order ${theirs.map(({ tag, provider }) => `${tag} goes to ${provider}`).join(", ")}. Write that name, or change the order first.`,
    });
  const away = sensors.filter(
    ({ last, isGone }) => isGone || (last !== null && !isInHouse(last) && move.kind !== "from-provider"),
  );
  return away.length === 0
    ? ok(null)
    : refuse("wrong-state", "Nothing was stored; what was scanned is still here.", {
        tags: `Not in the house: ${away.map(({ tag }) => tag).join(", ")}.`,
      });
};
