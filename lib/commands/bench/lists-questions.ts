import { isoDay } from "@/lib/domain/calibration/due";
import type { Program } from "@/lib/domain/machine/program";
import type { Actor } from "@/lib/domain/staff/actor";
import type { Role } from "@/lib/domain/staff/roles";
import { boardView } from "@/lib/views/board";
import { certificateListView } from "@/lib/views/certificate-list";
import { storageView } from "@/lib/views/custody/storage";
import { customersView } from "@/lib/views/customers";
import { openHoldsView } from "@/lib/views/hold/open-holds";
import { invoicingView } from "@/lib/views/invoicing/invoicing";
import { wireCertificatesView } from "@/lib/views/machine/wire-certificates";
import { wireOrdersView } from "@/lib/views/machine/wire-orders";
import { mailView } from "@/lib/views/mail";
import { nonconformitiesView } from "@/lib/views/nonconformity/nonconformities";
import { ordersView } from "@/lib/views/order/orders";
import { portalCertificateSumView } from "@/lib/views/portal/certificate-sum";
import { portalSensorsView } from "@/lib/views/portal/sensors";
import { portalCertificatesView } from "@/lib/views/portal-certificates";
import { portalOrdersView } from "@/lib/views/portal-orders";
import { runsView } from "@/lib/views/run/runs";
import { searchView } from "@/lib/views/search";
import { sensorsView } from "@/lib/views/sensor/sensors";
import { shipmentListView } from "@/lib/views/shipment/shipment-list";
import { todayView } from "@/lib/views/today";
import { middleOf, type Size, serialMiddleOf } from "./lists-database";

export type ListQuestion = {
  readonly name: string;
  readonly as: Role;
  readonly ask: (actor: Actor) => Promise<unknown>;
};

const desk = "front-desk";

/** Each must find something at both sizes: an empty answer is quick for the wrong reason. */
const full =
  (ask: (actor: Actor) => Promise<readonly unknown[]>) =>
  async (actor: Actor): Promise<void> => {
    if ((await ask(actor)).length === 0) throw new Error(`nothing was found: ${ask.toString()}`);
  };

/** A program of the laboratory, or of the customer who is asked. */
const programOf = (actor: Actor): Program => ({
  ...{ tokenId: "bench", scopes: [] },
  customerId: actor.kind === "customer" ? actor.customerId : null,
});

/** The lists of orders and customers, search and boards, as their pages ask for them. */
export const listQuestions = (size: Size): readonly ListQuestion[] => {
  const today = isoDay(new Date());
  const now = new Date();
  const middle = middleOf(size);
  const digits = serialMiddleOf(size);
  // Of the same sensor.
  const tag = `T-${String(size.orders * 5).padStart(6, "0")}`;
  const order = `O-2026-${String(middle).padStart(5, "0")}`;
  const orders = (query: Parameters<typeof ordersView>[1]) =>
    full(async (actor) => (await ordersView(actor, query, now)).orders);
  const sensors = (query: Parameters<typeof sensorsView>[1]) =>
    full(async (actor) => (await sensorsView(actor, query, today)).sensors);
  const certificates = (query: Parameters<typeof certificateListView>[1]) =>
    full(async (actor) => (await certificateListView(actor, query)).certificates);
  const search = (text: string) => full((actor) => searchView(actor, text));
  const wireOrders = full(async (actor) => (await wireOrdersView(programOf(actor), null)).orders);
  const wireCertificates = full(
    async (actor) => (await wireCertificatesView(programOf(actor), null)).certificates,
  );
  return [
    { name: "orders in work", as: desk, ask: orders({}) },
    { name: "orders, all", as: desk, ask: orders({ show: "all" }) },
    { name: "orders, completed", as: desk, ask: orders({ show: "completed" }) },
    { name: "orders, express", as: desk, ask: orders({ show: "all", urgency: "express" }) },
    { name: "orders, by rule set", as: desk, ask: orders({ show: "all", rules: "audited-heat-treatment" }) },
    { name: "orders, late", as: desk, ask: orders({ only: "late" }) },
    { name: "orders, at risk", as: desk, ask: orders({ only: "risk" }) },
    { name: "orders, waiting for the customer", as: desk, ask: orders({ only: "waiting" }) },
    { name: "orders, sensors still to come", as: desk, ask: orders({ only: "expected" }) },
    { name: "orders, offer declined", as: desk, ask: orders({ only: "declined" }) },
    { name: "orders, on hold", as: desk, ask: orders({ only: "held" }) },
    { name: "orders, something to send", as: desk, ask: orders({ only: "send" }) },
    { name: "orders, by their number", as: desk, ask: orders({ show: "all", q: `PO ${400_000 + middle}` }) },
    { name: "orders, by a name all customers bear", as: desk, ask: orders({ show: "all", q: "Works" }) },
    { name: "orders, a page in the middle", as: desk, ask: orders({ show: "all", after: order }) },
    { name: "sensors here", as: desk, ask: sensors({}) },
    { name: "sensors, all", as: desk, ask: sensors({ show: "all" }) },
    { name: "sensors, issued", as: desk, ask: sensors({ show: "issued" }) },
    { name: "sensors, of late orders", as: desk, ask: sensors({ only: "late" }) },
    { name: "sensors, on hold", as: desk, ask: sensors({ only: "held" }) },
    { name: "sensors, by the end of a serial", as: desk, ask: sensors({ show: "all", find: `-${middle}` }) },
    { name: "sensors, by the middle of a serial", as: desk, ask: sensors({ show: "all", find: digits }) },
    { name: "sensors, what begins so: SN 0", as: desk, ask: sensors({ show: "all", find: "SN 0" }) },
    {
      name: "customers",
      as: desk,
      ask: full(async (actor) => (await customersView(actor, {})).rows),
    },
    {
      name: "certificates",
      as: desk,
      ask: certificates({}),
    },
    { name: "certificates, by a tag", as: desk, ask: certificates({ q: tag }) },
    { name: "certificates, by the middle of a serial", as: desk, ask: certificates({ q: digits }) },
    { name: "certificates, by a customer's name", as: desk, ask: certificates({ q: "Hazel" }) },
    {
      name: "certificates, document still to be made",
      as: desk,
      ask: certificates({ only: "pending" }),
    },
    { name: "runs", as: "technician", ask: full(async (actor) => (await runsView(actor, {})).runs) },
    {
      name: "runs, open",
      as: "technician",
      ask: full(async (actor) => (await runsView(actor, { show: "open" })).runs),
    },
    {
      name: "mail",
      as: "quality-manager",
      ask: full(async (actor) => (await mailView(actor, today)).messages),
    },
    { name: "search, serial", as: desk, ask: search(`-${middle}`) },
    { name: "search, what begins so: SN 0", as: desk, ask: search("SN 0") },
    { name: "search, middle of a serial", as: desk, ask: search(`-${middle}`.slice(0, -1)) },
    { name: "search, order", as: desk, ask: search(order) },
    { name: "search, purchase order", as: desk, ask: search(`PO ${400_000 + middle}`) },
    { name: "search, customer", as: desk, ask: search("Hazel") },
    { name: "search, certificate", as: desk, ask: search(`C-2026-${String(middle).padStart(6, "0")}`) },
    { name: "search, run", as: desk, ask: search(`R-2026-${String(middle).padStart(5, "0")}`) },
    {
      name: "portal, orders",
      as: "customer",
      ask: full(async (actor) => (await portalOrdersView(actor)).orders),
    },
    {
      name: "portal, certificates",
      as: "customer",
      ask: full(async (actor) => (await portalCertificatesView(actor)).certificates),
    },
    {
      name: "portal, sensors",
      as: "customer",
      ask: full(async (actor) => (await portalSensorsView(actor, now)).sensors),
    },
    {
      name: "portal, all certificates in one",
      as: "customer",
      ask: full(async (actor) => {
        const { count } = await portalCertificateSumView(actor);
        return count > 0 ? [count] : [];
      }),
    },
    { name: "programs of the laboratory, orders", as: desk, ask: wireOrders },
    { name: "programs of the laboratory, certificates", as: desk, ask: wireCertificates },
    { name: "programs of a customer, orders", as: "customer", ask: wireOrders },
    { name: "programs of a customer, certificates", as: "customer", ask: wireCertificates },
    {
      name: "holds, the longest first",
      as: desk,
      ask: full(async (actor) => (await openHoldsView(actor, { filter: "all", page: 1 })).holds),
    },
    { name: "storage places", as: desk, ask: full(async (actor) => (await storageView(actor, now)).places) },
    {
      name: "nonconforming work, not closed",
      as: desk,
      ask: full(
        async (actor) =>
          (await nonconformitiesView(actor, { state: "not-closed", kind: "all", page: 1 })).rows,
      ),
    },
    {
      name: "nonconforming work and complaints, all",
      as: desk,
      ask: full(
        async (actor) => (await nonconformitiesView(actor, { state: "all", kind: "all", page: 1 })).rows,
      ),
    },
    {
      name: "shipments",
      as: desk,
      ask: full(async (actor) => (await shipmentListView(actor)).shipments),
    },
    {
      name: "for invoicing",
      as: desk,
      ask: full(async (actor) => (await invoicingView(actor, now)).waiting),
    },
    { name: "board, the week", as: desk, ask: full(async (actor) => (await boardView(actor, now)).numbers) },
    { name: "today, front desk", as: desk, ask: full((actor) => todayView(actor, today)) },
    { name: "today, technician", as: "technician", ask: full((actor) => todayView(actor, today)) },
    { name: "today, signatory", as: "signatory", ask: full((actor) => todayView(actor, today)) },
    { name: "today, quality manager", as: "quality-manager", ask: full((actor) => todayView(actor, today)) },
  ];
};
