import type { ReactElement } from "react";
import { renderToStaticMarkup } from "react-dom/server";
import { describe, expect, it } from "vitest";
import { NoCertificates } from "@/app/(lab)/certificates/no-certificates";
import { NoOrders } from "@/app/(lab)/orders/no-orders";
import { OrderFilters } from "@/app/(lab)/orders/order-filters";
import { HitState } from "@/app/(lab)/search/hit-state";
import { NoSensors } from "@/app/(lab)/sensors/no-sensors";
import type { OrderQuery } from "@/lib/domain/order/list-query";
import { shownOf } from "@/lib/domain/order/list-query";
import { type SensorQuery, shownSensors } from "@/lib/domain/sensor/list-query";
import type { OrdersView } from "@/lib/views/order/orders";
import type { SensorsView } from "@/lib/views/sensor/sensors";

const html = (element: ReactElement) => renderToStaticMarkup(element).replaceAll("&amp;", "&");

describe("an empty list", () => {
  const orders = (query: OrderQuery) =>
    html(<NoOrders list={{ filter: shownOf(query), customer: "Northern" } as OrdersView} query={query} />);
  const sensors = (query: SensorQuery) =>
    html(<NoSensors list={{ filter: shownSensors(query) } as SensorsView} query={query} />);

  it("of orders names the word and the filters, and leads to all of them", () => {
    expect(orders({ q: "zzz" })).toContain("No open order is found by: “zzz”");
    expect(orders({ q: "zzz" })).toContain('href="/orders?q=zzz&show=all"');
    const filtered = orders({ only: "late", urgency: "express", customer: "c", due: "2026-03-01" });
    expect(filtered).toContain("No order is found by: Late, Express, Northern, Promised by 2026-03-01");
    expect(filtered).toContain('href="/orders?show=all"');
    expect(filtered).not.toContain("Look among all");
    expect(filtered).not.toContain("An order says");
    expect(orders({ show: "cancelled" })).toContain("No cancelled orders");
    expect(orders({})).toContain("An order says whose sensors");
  });

  it("of sensors says of one or two characters where they were looked for, whatever stands between", () => {
    for (const find of ["K-", "k", "A/7", "- -"])
      expect(sensors({ find })).toContain(`No sensor here has a serial that begins or ends with “${find}”`);
    expect(sensors({ find: "K-4" })).toContain("begins or ends with");
    expect(sensors({ find: "HX-K" })).toContain("No sensor here has “HX-K” in its serial");
    expect(sensors({ find: "K-" })).toContain('href="/sensors?find=K-&show=all"');
    expect(sensors({ find: "HX-K", show: "all" })).toContain("No sensor has “HX-K” in its serial");
    expect(sensors({ only: "late" })).toContain("No sensor here is left by these filters");
    expect(sensors({})).toContain("Sensors appear here once they are taken in");
  });

  it("of certificates says the rule for what is short, and does not say that there are none", () => {
    const certificates = (query: Parameters<typeof NoCertificates>[0]["query"]) =>
      html(<NoCertificates query={query} />);
    expect(certificates({ q: "K-" })).toContain(
      "one or two characters are looked for at its beginning and end",
    );
    expect(certificates({ q: "OB-2219" })).toContain("No certificate matches “OB-2219”");
    expect(certificates({ q: "OB-2219" })).not.toContain("one or two characters");
    expect(certificates({ q: "OB", only: "pending" })).toContain('href="/certificates?q=OB"');
    expect(certificates({ only: "pending" })).toContain("No document is pending");
    expect(certificates({})).toContain("No certificate yet");
  });
});

it("a quotation or a shipment that was found has no state, which would be its order's", () => {
  const hit = { key: "O-2026-0001", label: "S-2026-0002", detail: "", state: "accepted", rank: 0 };
  expect(html(<HitState hit={{ ...hit, kind: "paper" }} />)).toBe("");
  expect(html(<HitState hit={{ ...hit, kind: "order" }} />)).toContain("Accepted");
});

describe("the filters of the orders", () => {
  const filters = (query: OrderQuery, count: number | null) =>
    html(
      <OrderFilters
        query={query}
        list={{ filter: shownOf(query), filters: [{ name: "open", count }], customer: null } as OrdersView}
      />,
    );

  it("have a field for words, which keeps the others and begins at the first page", () => {
    const drawn = filters({ q: "zzz", show: "accepted", only: "late", after: "O-2026-0001" }, null);
    expect(drawn).toMatch(/<input[^>]* name="q"[^>]* value="zzz"/);
    expect(drawn).toContain('<input type="hidden" name="show" value="accepted"/>');
    expect(drawn).toContain('<input type="hidden" name="only" value="late"/>');
    expect(drawn).not.toMatch(/name="after"|name="q" type="hidden"/);
  });

  it("show a count where there is one, none where a word would make it untrue", () => {
    expect(filters({}, 7)).toContain('<span class="quiet"> 7</span>');
    expect(filters({ q: "zzz" }, null)).not.toContain('class="quiet"> ');
  });
});
