import { EmptyState } from "@/app/_ui/empty-state";
import { LinkButton } from "@/app/_ui/link-button";
import { isNarrowed } from "@/lib/domain/list/narrowed";
import { addressOf, changed } from "@/lib/domain/list/query";
import { isShortWord } from "@/lib/domain/list/short-word";
import type { SensorQuery } from "@/lib/domain/sensor/list-query";
import type { SensorsView } from "@/lib/views/sensor/sensors";

const titleOf = ({ find }: SensorQuery, isAll: boolean, narrowed: boolean): string => {
  const none = isAll ? "No sensor" : "No sensor here";
  if (find)
    return isShortWord(find)
      ? `${none} has a serial that begins or ends with “${find}”, or a tag that begins with it`
      : `${none} has “${find}” in its serial or at the beginning of its tag`;
  if (narrowed) return `${none} is left by these filters`;
  return isAll ? "No sensors yet" : "No sensors here";
};

type Props = { readonly list: SensorsView; readonly query: SensorQuery };

/** Says what was looked for and found no sensor, and leads to where there are more. */
export function NoSensors({ list, query }: Props) {
  const narrowed = isNarrowed(query);
  const isAll = list.filter === "all";
  const everywhere = addressOf("/sensors", changed(query, { show: "all" }));
  return (
    <EmptyState
      title={titleOf(query, isAll, narrowed)}
      action={
        <div className="row">
          {narrowed && !isAll ? <LinkButton href={everywhere}>Look among all sensors</LinkButton> : null}
          {narrowed || !isAll ? <LinkButton href="/sensors?show=all">Show all sensors</LinkButton> : null}
        </div>
      }
    >
      {query.find && isShortWord(query.find)
        ? "One or two characters are looked for at the beginning and end of a serial alone; three or more anywhere in it."
        : null}
      {narrowed
        ? null
        : "Sensors appear here once they are taken in for an accepted order. Open the order, then Take sensors in."}
    </EmptyState>
  );
}
