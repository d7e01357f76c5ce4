import { loadStandings } from "@/lib/data/certificate/standing";
import { type AsideSensors, asideSensors } from "@/lib/data/hold/aside-sensors";
import type { Tx } from "@/lib/data/in-scope";
import { certificatesOfSensors } from "@/lib/data/parts/certificates-of-sensors";
import { loadAnsweredQuestions } from "@/lib/data/portal/answered-questions";
import { offerStandings } from "@/lib/data/portal/offer-standing";
import { loadOpenQuestions } from "@/lib/data/portal/open-questions";
import { countedReports, type ProviderReport } from "@/lib/data/provider/report-store";
import { orderAsideCounts } from "@/lib/data/sql/order-aside-counts";
import { noSensors, type OrderSensors, orderSensorStates } from "@/lib/data/sql/order-sensor-states";
import { isoDay } from "@/lib/domain/calibration/due";
import { noneStands } from "@/lib/domain/certificate/none-stands";
import type { Standing } from "@/lib/domain/certificate/standing";
import { besideAnchor, cutPage, portalPageSize, turnOf } from "@/lib/domain/list/page";
import { cancellationIn } from "@/lib/domain/order/cancellation";
import { plainAside } from "@/lib/domain/order/plain-where";
import { awaitedInstead, orderProgress, type ProgressAside } from "@/lib/domain/order/progress";
import { isOrderState } from "@/lib/domain/order/transitions";
import { isSensorState } from "@/lib/domain/sensor/transitions";
import type { Actor } from "@/lib/domain/staff/actor";
import { may } from "@/lib/domain/staff/permissions";
import { externalOf, whereOf } from "./portal/external-result";
import { orderedLines } from "./portal/ordered-lines";
import { saidOfOrder } from "./portal/said-of-order";
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

const summaryOf = (
  row: Summed,
  { quantity, certified, states: sensorStates }: OrderSensors = noSensors,
  aside: ProgressAside = {},
) => {
  const states = sensorStates.filter(isSensorState);
  return {
    number: row.number,
    purchaseOrder: row.purchaseOrder ?? "",
    recordedAt: row.recordedAt.toISOString(),
    isOpen: row.state !== "completed" && row.state !== "cancelled",
    /** Asked for in the portal, and not looked at yet. */
    isAskedFor: row.state === "requested",
    promisedOn: row.state === "cancelled" ? null : (row.promisedOn?.toISOString().slice(0, 10) ?? null),
    quantity,
    certified,
    progress: orderProgress(isOrderState(row.state) ? row.state : "recorded", quantity, states, aside),
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

/** Until its sensors are back, a cancelled order too. */
const underWay = {
  OR: [
    { state: { notIn: ["completed", "cancelled"] } },
    {
      state: "cancelled",
      lines: { some: { sensors: { some: { state: { not: "collected" } } } } },
    },
  ],
};

/** A customer's own orders, the newest first, a page of them, with how far each is. */
export const portalOrdersView = (actor: Actor, asked: Asked = {}, now = new Date()) =>
  answer(actor, "portal.read", async (tx) => {
    const turn = turnOf(asked);
    const rows = await tx.order.findMany({
      where: {
        ...besideAnchor(turn),
        ...(asked.onlyOpen ? underWay : {}),
      },
      select: summed,
      orderBy: { number: turn.kind === "before" ? "asc" : "desc" },
      take: portalPageSize + 1,
    });
    const page = cutPage(rows, turn, ({ number }) => number, portalPageSize);
    const ids = page.rows.map(({ id }) => id);
    const sensors = await orderSensorStates(tx, ids);
    const asides = await orderAsideCounts(tx, ids);
    const standings = await offerStandings(tx, ids, isoDay(now));
    return {
      orders: page.rows.map((row) =>
        summaryOf(row, sensors.get(row.id), { ...asides.get(row.id), ...standings.get(row.id) }),
      ),
      next: page.next,
      previous: page.previous,
    };
  });

const quantityOf = (row: Row) => row.lines.reduce((sum, line) => sum + line.quantity, 0);
const statesOf = (row: Row) => row.lines.flatMap((line) => line.sensors.map(({ state }) => state));

type Shown = {
  readonly orderState: string;
  readonly isAwaited: boolean;
  readonly isSubcontracted: boolean;
  readonly report: ProviderReport | undefined;
  readonly aside: AsideSensors;
};

type Certified = {
  readonly sensorId: string;
  readonly number: string;
  readonly token: string;
  readonly standing: Standing;
};

/** It was certified, and none of its certificates stands: the last of them was withdrawn. */
const isWithdrawn = (sensor: { readonly id: string; readonly state: string }, all: readonly Certified[]) => {
  const own = all.filter(({ sensorId }) => sensorId === sensor.id);
  const isCertified = sensor.state === "issued" || sensor.state === "collected";
  return isCertified && noneStands(own);
};

const hasCertificate = (
  { id }: { readonly id: string },
  certificates: readonly Certified[],
  report: ProviderReport | undefined,
): boolean => report !== undefined || certificates.some(({ sensorId }) => sensorId === id);

const sensorOf = (
  sensor: Row["lines"][number]["sensors"][number],
  certificates: readonly Certified[],
  { aside, isAwaited, isSubcontracted, orderState, report }: Shown,
) => ({
  tag: sensor.tag,
  serial: sensor.serial,
  typeLetter: sensor.typeLetter,
  state: sensor.state,
  where:
    plainAside(orderState, {
      state: sensor.state,
      isHeld: aside.held.has(sensor.id),
      isGoingBack: aside.goingBack.has(sensor.id),
      isReplaced: aside.replaced.has(sensor.id),
      isAwaited,
    }) ??
    (sensor.state === "issued" && isWithdrawn(sensor, certificates)
      ? "Certificate withdrawn"
      : whereOf(sensor.state, isSubcontracted, hasCertificate(sensor, certificates, report))),
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

/** As far as the order is: what another sensor is awaited for takes no place in it. */
const withoutReplaced = (row: Row, { replaced }: AsideSensors): Row => ({
  ...row,
  lines: row.lines.map((line) => ({
    ...line,
    sensors: line.sensors.filter(({ id }) => !replaced.has(id)),
  })),
});

/** "20 ordered, 18 have come, 3 certified, 1 stands still": an order is done in parts, and this says how far. */
const countsOf = (
  row: Row,
  certificates: readonly Certified[],
  { quantity, certified: everCertified }: OrderSensors,
  { held }: AsideSensors,
  awaited: number,
): string => {
  const sensors = row.lines.flatMap((line) => line.sensors);
  const certified = everCertified - sensors.filter((sensor) => isWithdrawn(sensor, certificates)).length;
  const come = row.lines.reduce((sum, line) => sum + line.sensors.length, 0);
  return [
    `${quantity} ordered`,
    `${come} ${come === 1 ? "has" : "have"} come`,
    awaited > 0 ? `${awaited} awaited in the place of what is not measured` : "",
    certified > 0 ? `${certified} certified` : "",
    held.size > 0 && row.state !== "cancelled"
      ? `${held.size} ${held.size === 1 ? "stands" : "stand"} still`
      : "",
  ]
    .filter(Boolean)
    .join(", ");
};

/** One order of the customer; another's number is simply not there. */
export const portalOrderView = (actor: Actor, number: string, now = new Date()) =>
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
    const notes = await saidOfOrder(tx, row.id);
    const questions = await loadOpenQuestions(tx, { orderId: row.id });
    const counts: ProgressAside = {
      ...(await orderAsideCounts(tx, [row.id])).get(row.id),
      replacedSerials: sensors.filter(({ id }) => aside.replaced.has(id)).map(({ serial }) => serial),
      isAsked: questions.length > 0,
      ...(await offerStandings(tx, [row.id], isoDay(now))).get(row.id),
    };
    const isOver = row.state === "cancelled" || row.state === "completed";
    const awaited = isOver
      ? 0
      : awaitedInstead(quantityOf(row), statesOf(counted).filter(isSensorState), counts);
    const isAwaited = awaited > 0 && awaited === aside.replaced.size;
    const change = await tx.orderChange.findFirst({
      where: { orderId: row.id },
      select: { changedAt: true },
      orderBy: { sequence: "desc" },
    });
    const reports = await countedReports(tx, ids);
    const come = (await orderSensorStates(tx, [row.id])).get(row.id) ?? noSensors;
    return {
      ...summaryOf(counted, come, counts),
      counts: countsOf(counted, shown, come, aside, awaited),
      /** The day of its last change; null: it stands as it was accepted. */
      changedOn: change?.changedAt.toISOString().slice(0, 10) ?? null,
      lines: orderedLines(row),
      sensors: row.lines.flatMap((line) =>
        line.sensors.map((sensor) =>
          sensorOf(sensor, shown, {
            ...{ aside, report: reports.get(sensor.id), isSubcontracted: line.providerId !== null },
            ...{ isAwaited, orderState: row.state },
          }),
        ),
      ),
      answered: await loadAnsweredQuestions(tx, row.id),
      questions: questions.map(({ id, text, choices, serial }) => ({
        ...{ id, text, choices, serial },
      })),
      notes,
      cancelledBecause: row.state === "cancelled" ? cancellationIn(notes) : null,
      mayAnswer: actor.kind === "customer" && may(actor.roles, "portal.order"),
    };
  });

export type PortalOrderSummary = Awaited<ReturnType<typeof portalOrdersView>>["orders"][number];
export type PortalOrder = Awaited<ReturnType<typeof portalOrderView>>;
