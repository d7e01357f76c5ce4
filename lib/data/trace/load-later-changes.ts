import { isoDay } from "@/lib/domain/calibration/due";
import type { Chain } from "@/lib/domain/trace/chain";
import type { LaterChange } from "@/lib/domain/trace/later-flags";
import type { Tx } from "../in-scope";
import { type LaterChangeRow, laterChangeRows } from "../sql/later-changes";

const changeOf = ({ kind, tag, word, certificate, day }: LaterChangeRow): LaterChange => {
  const on = day ? isoDay(day) : "";
  switch (kind) {
    case "calibrated-again":
      return { kind, tag, certificate, on, standing: word };
    case "rejected":
      return { kind, tag, certificate, on };
    case "provider-suspended":
      return { kind, tag, certificate, provider: word };
    default:
      return { kind: "equipment-state", tag, state: word };
  }
};

/** What was recorded about the things of a chain since, as known on a day. One statement. */
export const loadLaterChanges = async (
  tx: Tx,
  { nodes }: Chain,
  on: string,
): Promise<readonly LaterChange[]> => {
  const idsOf = (name: "equipmentId" | "calibrationId") => [
    ...new Set(nodes.filter(({ kind }) => kind === "standard").flatMap(({ facts }) => facts[name] ?? [])),
  ];
  return (await laterChangeRows(tx, idsOf("equipmentId"), idsOf("calibrationId"), on)).map(changeOf);
};
