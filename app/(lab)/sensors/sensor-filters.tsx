import { FilterLinks } from "@/app/_ui/filter-links";
import { Tabs } from "@/app/_ui/tabs";
import { shortCount } from "@/lib/domain/list/page";
import { addressOf, changed } from "@/lib/domain/list/query";
import { sensorStateLabels } from "@/lib/domain/sensor/labels";
import {
  type SensorFilter,
  type SensorQuery,
  sensorOnly,
  sensorOnlyLabels,
} from "@/lib/domain/sensor/list-query";
import type { SensorsView } from "@/lib/views/sensor/sensors";

export const sensorFilterLabels: Readonly<Record<SensorFilter, string>> = {
  here: "Here",
  ...sensorStateLabels,
  all: "All",
};

type Props = { readonly query: SensorQuery; readonly list: SensorsView };

const path = "/sensors";

const toggle = (query: SensorQuery, name: keyof SensorQuery, value: string, label: string) => {
  const isOn = query[name] === value;
  return { label, isOn, href: addressOf(path, changed(query, { [name]: isOn ? undefined : value })) };
};

/** Every filter of the list as a link. */
export function SensorFilters({ query, list }: Props) {
  const hrefOf = (show: string) =>
    addressOf(path, changed(query, { show: show === "here" ? undefined : show }));
  return (
    <>
      <Tabs
        label="Sensors by state"
        current={hrefOf(list.filter)}
        tabs={list.filters.map(({ name, count }) => ({
          label: sensorFilterLabels[name],
          href: hrefOf(name),
          count: count === null ? undefined : shortCount(count),
        }))}
      />
      <div className="filter-rows">
        <FilterLinks
          label="Only"
          links={[
            ...sensorOnly.map((only) => toggle(query, "only", only, sensorOnlyLabels[only])),
            ...(query.customer
              ? [toggle(query, "customer", query.customer, list.customer ?? "Customer")]
              : []),
            ...(query.type ? [toggle(query, "type", query.type, `Type ${query.type}`)] : []),
          ]}
        />
      </div>
    </>
  );
}
