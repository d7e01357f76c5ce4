import { FilterLinks } from "@/app/_ui/filter-links";
import { FindForm } from "@/app/_ui/find-form";
import { Tabs } from "@/app/_ui/tabs";
import { shortCount } from "@/lib/domain/list/page";
import { addressOf, changed } from "@/lib/domain/list/query";
import { type Urgency, urgencyLabels } from "@/lib/domain/order/labels";
import { type OrderQuery, orderOnly, orderOnlyLabels } from "@/lib/domain/order/list-query";
import { ruleSetLabels } from "@/lib/domain/order/rule-set";
import type { OrdersView } from "@/lib/views/order/orders";
import { orderFilterLabels } from "./order-marks";

type Props = { readonly query: OrderQuery; readonly list: OrdersView };

const path = "/orders";

/** Where the filter is on, its link leads back to the list without it. */
const toggle = (query: OrderQuery, name: keyof OrderQuery, value: string, label: string) => {
  const isOn = query[name] === value;
  return { label, isOn, href: addressOf(path, changed(query, { [name]: isOn ? undefined : value })) };
};

/** A field for words, and every other filter as a link: an address can be kept, sent, and opened tomorrow. */
export function OrderFilters({ query, list }: Props) {
  const hrefOf = (show: string) =>
    addressOf(path, changed(query, { show: show === "open" && !query.only ? undefined : show }));
  const named = [
    ...(query.customer ? [toggle(query, "customer", query.customer, list.customer ?? "Customer")] : []),
    ...(query.q ? [toggle(query, "q", query.q, `“${query.q}”`)] : []),
    ...(query.from ? [toggle(query, "from", query.from, `Recorded from ${query.from}`)] : []),
    ...(query.to ? [toggle(query, "to", query.to, `Recorded until ${query.to}`)] : []),
    ...(query.due ? [toggle(query, "due", query.due, `Promised by ${query.due}`)] : []),
  ];
  const { q, after: _, before: __, ...kept } = query;
  return (
    <>
      <FindForm
        path={path}
        name="q"
        label="Number, customer’s order number or customer"
        value={q ?? ""}
        kept={kept}
      />
      <Tabs
        label="Orders by state"
        current={hrefOf(list.filter)}
        tabs={list.filters.map(({ name, count }) => ({
          label: orderFilterLabels[name],
          href: hrefOf(name),
          count: count === null ? undefined : shortCount(count),
        }))}
      />
      <div className="filter-rows">
        <FilterLinks
          label="Only"
          links={orderOnly.map((only) => toggle(query, "only", only, orderOnlyLabels[only]))}
        />
        <FilterLinks
          label="Kind"
          links={[
            toggle(query, "urgency", "express", urgencyLabels["express" satisfies Urgency]),
            toggle(query, "rules", "audited-heat-treatment", ruleSetLabels["audited-heat-treatment"]),
          ]}
        />
        {named.length > 0 ? <FilterLinks label="And" links={named} /> : null}
      </div>
    </>
  );
}
