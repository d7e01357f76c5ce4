import { loadStandings } from "@/lib/data/certificate/standing";
import { type AsideSensors, asideSensors } from "@/lib/data/hold/aside-sensors";
import type { Tx } from "@/lib/data/in-scope";
import { certificatesOfSensors } from "@/lib/data/parts/certificates-of-sensors";
import { loadOpenQuestions } from "@/lib/data/portal/open-questions";
import { countedReports, type ProviderReport } from "@/lib/data/provider/report-store";
import { orderSensorStates } from "@/lib/data/sql/order-sensor-states";
import type { Standing } from "@/lib/domain/certificate/standing";
import { besideAnchor, cutPage, portalPageSize, turnOf } from "@/lib/domain/list/page";
import { cancellationIn } from "@/lib/domain/order/cancellation";
import { orderProgress } from "@/lib/domain/order/progress";
import { tolerancePhrase } from "@/lib/domain/order/tolerance-phrase";
import { isOrderState } from "@/lib/domain/order/transitions";
import { isSensorState } from "@/lib/domain/sensor/transitions";
import type { Actor } from "@/lib/domain/staff/actor";
import { may } from "@/lib/domain/staff/permissions";
import { externalOf, whereOf } from "./portal/external-result";
import { answer, found } from "./view";

const include = {
  lines: {
    orderBy: { position: "asc" },
    include: {
      setpoints: { orderBy: { position: "asc" } },
      sensors: { orderBy: { tag: "asc" }, include: { intake: true } },
    },
  },
} as const;

type Row = Awaited<ReturnType<typeof loadOrders>>[number];

const loadOrders = (tx: Tx, where: { readonly number?: string }) =>
  tx.order.findMany({ where, include, orderBy: { number: "desc" } });

type Summed = Pick<Row, "number" | "purchaseOrder" | "recordedAt" | "state" | "promisedOn">;

const summaryOf = (row: Summed, quantity: number, sensorStates: readonly string[]) => {
  const states = sensorStates.filter(isSensorState);
  return {
    number: row.number,
    purchaseOrder: row.purchaseOrder ?? "",
    recordedAt: row.recordedAt.toISOString(),
    isOpen: row.state !== "completed" && row.state !== "cancelled",
    /** Asked for in the portal, and not looked at yet. */
    isAskedFor: row.state === "requested",
    promisedOn: row.promisedOn?.toISOString().slice(0, 10) ?? null,
    quantity,
    certified: states.filter((state) => state === "issued" || state === "collected").length,
    progress: orderProgress(isOrderState(row.state) ? row.state : "recorded", quantity, states),
  };
};

const summed = {
  id: true,
  number: true,
  purchaseOrder: true,
  recordedAt: true,
  state: true,
  promisedOn: true,
} as const;

type Asked = { readonly onlyOpen?: boolean; readonly after?: string; readonly before?: string };

/** A customer's own orders, the newest first, a page of them, with how far each is. */
export const portalOrdersView = (actor: Actor, asked: Asked = {}) =>
  answer(actor, "portal.read", async (tx) => {
    const turn = turnOf(asked);
    const rows = await tx.order.findMany({
      where: {
        ...besideAnchor(turn),
        ...(asked.onlyOpen ? { state: { notIn: ["completed", "cancelled"] } } : {}),
      },
      select: summed,
      orderBy: { number: turn.kind === "before" ? "asc" : "desc" },
      take: portalPageSize + 1,
    });
    const page = cutPage(rows, turn, ({ number }) => number, portalPageSize);
    const sensors = await orderSensorStates(
      tx,
      page.rows.map(({ id }) => id),
    );
    return {
      orders: page.rows.map((row) => {
        const { quantity, states } = sensors.get(row.id) ?? { quantity: 0, states: [] };
        return summaryOf(row, quantity, states);
      }),
      next: page.next,
      previous: page.previous,
    };
  });

const wholeSummaryOf = (row: Row) =>
  summaryOf(
    row,
    row.lines.reduce((sum, line) => sum + line.quantity, 0),
    row.lines.flatMap((line) => line.sensors.map(({ state }) => state)),
  );

type Shown = {
  readonly isSubcontracted: boolean;
  readonly report: ProviderReport | undefined;
  readonly aside: AsideSensors;
};

const sensorOf = (
  sensor: Row["lines"][number]["sensors"][number],
  certificates: readonly {
    readonly sensorId: string;
    readonly number: string;
    readonly token: string;
    readonly standing: Standing;
  }[],
  { aside, isSubcontracted, report }: Shown,
) => ({
  tag: sensor.tag,
  serial: sensor.serial,
  typeLetter: sensor.typeLetter,
  state: sensor.state,
  where: aside.held.has(sensor.id)
    ? "Stands still until something is settled"
    : aside.goingBack.has(sensor.id)
      ? "Not measured, goes back to you"
      : whereOf(sensor.state, isSubcontracted),
  external: externalOf(report),
  /** What was found when it came: empty where it came as described. */
  remark: sensor.intake?.condition === "deviates" ? sensor.intake.conditionNote : "",
  certificates: certificates
    .filter(({ sensorId }) => sensorId === sensor.id)
    .map(({ number, standing, token }) => ({
      ...{ number, standing, token },
      href: `/api/certificates/${token}`,
    })),
});

const lineOf = (line: Row["lines"][number]) => ({
  position: line.position,
  typeLetter: line.typeLetter,
  construction: line.construction,
  quantity: line.quantity,
  setpoints:
    line.setpoints.length > 0
      ? `${line.setpoints.map(({ typed }) => typed).join(", ")} °${line.temperatureUnit}`
      : "temperatures we propose",
  tolerance: tolerancePhrase(line),
});

/** As far as the order is: what another sensor is awaited for takes no place in it. */
const withoutReplaced = (row: Row, { replaced }: AsideSensors): Row => ({
  ...row,
  lines: row.lines.map((line) => ({
    ...line,
    sensors: line.sensors.filter(({ id }) => !replaced.has(id)),
  })),
});

/** "20 ordered, 18 have come, 3 certified, 1 stands still": an order is done in parts, and this says how far. */
const countsOf = (row: Row, { held }: AsideSensors): string => {
  const { quantity, certified } = wholeSummaryOf(row);
  const come = row.lines.reduce((sum, line) => sum + line.sensors.length, 0);
  return [
    `${quantity} ordered`,
    `${come} ${come === 1 ? "has" : "have"} come`,
    certified > 0 ? `${certified} certified` : "",
    held.size > 0 ? `${held.size} ${held.size === 1 ? "stands" : "stand"} still` : "",
  ]
    .filter(Boolean)
    .join(", ");
};

/** What was said, and who said it: the laboratory as a whole, or whoever it was of the customer's own people. */
const notesOf = async (tx: Tx, orderId: string) => {
  const notes = await tx.orderNote.findMany({ where: { orderId }, orderBy: { id: "asc" } });
  const ids = notes.flatMap(({ kind, saidById }) => (kind === "from-customer" && saidById ? [saidById] : []));
  const people = await tx.person.findMany({
    where: { id: { in: ids }, customerId: { not: null } },
    select: { id: true, name: true },
  });
  return notes.map(({ kind, text, saidAt, saidById, saidByName }) => {
    const name = people.find(({ id }) => id === saidById)?.name ?? saidByName;
    const theirs = name === "" ? "you" : `you, ${name}`;
    return { text, who: kind === "from-customer" ? theirs : "we", at: saidAt.toISOString() };
  });
};

/** One order of the customer; another's number is simply not there. */
export const portalOrderView = (actor: Actor, number: string) =>
  answer(actor, "portal.read", async (tx) => {
    const row = found((await loadOrders(tx, { number }))[0]);
    const sensors = row.lines.flatMap((line) => line.sensors);
    const ids = sensors.map(({ id }) => id);
    const certificates = await certificatesOfSensors(tx, ids);
    const standings = await loadStandings(
      tx,
      certificates.map(({ id }) => id),
    );
    const standingOf = ({ id }: { readonly id: string }) => standings.get(id) ?? ({ kind: "valid" } as const);
    const shown = certificates.map((one) => ({ ...one, standing: standingOf(one) }));
    const aside = await asideSensors(tx, [row.id], sensors);
    const counted = withoutReplaced(row, aside);
    const notes = await notesOf(tx, row.id);
    const reports = await countedReports(tx, ids);
    return {
      ...wholeSummaryOf(counted),
      counts: countsOf(counted, aside),
      lines: row.lines.map(lineOf),
      sensors: row.lines.flatMap((line) =>
        line.sensors.map((sensor) =>
          sensorOf(sensor, shown, {
            ...{ aside, report: reports.get(sensor.id), isSubcontracted: line.providerId !== null },
          }),
        ),
      ),
      questions: (await loadOpenQuestions(tx, { orderId: row.id })).map(({ id, text, choices, serial }) => ({
        ...{ id, text, choices, serial },
      })),
      notes,
      cancelledBecause: row.state === "cancelled" ? cancellationIn(notes) : null,
      mayAnswer: actor.kind === "customer" && may(actor.roles, "portal.order"),
    };
  });

export type PortalOrderSummary = Awaited<ReturnType<typeof portalOrdersView>>["orders"][number];
export type PortalOrder = Awaited<ReturnType<typeof portalOrderView>>;
