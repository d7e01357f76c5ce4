import Link from "next/link";
import { Breadcrumb } from "@/app/_ui/breadcrumb";
import { Page } from "@/app/_ui/page";
import { Section } from "@/app/_ui/section";
import { StateMark } from "@/app/_ui/state-mark";
import { orderContractView } from "@/lib/views/order/contract";
import { orderDecidabilityView } from "@/lib/views/order/decidability";
import { orderView } from "@/lib/views/order/order";
import { orderPartsView } from "@/lib/views/order/parts";
import { orderReturnAddressView } from "@/lib/views/order/return-address";
import { offerStandingView } from "@/lib/views/quotation/offer-standing";
import { orderCommerceView } from "@/lib/views/quotation/order-commerce";
import { requireStaff } from "@/lib/web/auth";
import { load } from "@/lib/web/load";
import { HoldSection } from "../../holds/hold-section";
import { ReportLine } from "../../quality/report-line";
import { HistoryList } from "../history-list";
import { orderMarks } from "../order-marks";
import { AwaitedSensors } from "./awaited-sensors";
import { CancelOrder } from "./cancel-order";
import { OrderContract } from "./contract/order-contract";
import { ContractReview } from "./contract-review";
import { OfferStanding } from "./offer-standing";
import { OrderActions } from "./order-actions";
import { OrderCommerce } from "./order-commerce";
import { OrderLineDetails } from "./order-lines";
import { OrderTerms } from "./order-terms";
import { OrderThread } from "./order-thread";
import { PartsMatrix } from "./parts-matrix";
import { PromiseAnew } from "./promise-anew";
import { OpenRolls } from "./rolls/open-rolls";

type Props = { readonly params: Promise<{ readonly number: string }> };

export const generateMetadata = async ({ params }: Props) => ({ title: `Order ${(await params).number}` });

export default async function OrderPage({ params }: Props) {
  const actor = await requireStaff();
  const order = await load(orderView(actor, (await params).number, new Date()));
  const isInReview = order.state === "recorded" || order.state === "requested";
  const points = isInReview ? await load(orderDecidabilityView(actor, order.number, new Date())) : [];
  const commerce = await load(orderCommerceView(actor, order.number));
  const contract = await load(orderContractView(actor, order.number));
  return (
    <Page
      title={`Order ${order.number}`}
      crumbs={<Breadcrumb trail={[{ label: "Orders", href: "/orders" }]} />}
      state={<StateMark {...orderMarks(order.state)} />}
      lead={
        <>
          For <Link href={`/customers/${order.customer.id}`}>{order.customer.name}</Link>
          {order.purchaseOrder ? `, their number ${order.purchaseOrder}` : ""}
        </>
      }
      thread={<OrderThread order={order} />}
      actions={<OrderActions order={order} />}
    >
      <PromiseAnew number={order.number} view={commerce} />
      <OfferStanding offer={await load(offerStandingView(actor, order.number, new Date()))} />
      {isInReview ? <ContractReview order={order} points={points} /> : null}
      <Section title="Lines and sensors" id="sensors">
        <OpenRolls order={order.mayAgreeRoll ? order.number : null} rolls={order.openRolls} />
        <AwaitedSensors awaited={order.awaited} />
        {order.lines.map((line) => (
          <OrderLineDetails key={line.position} line={line} />
        ))}
      </Section>
      <HoldSection actor={actor} order={order.number} />
      <PartsMatrix lines={await load(orderPartsView(actor, order.number))} />
      <OrderTerms order={order} returnTo={await load(orderReturnAddressView(actor, order.number))} />
      <OrderContract contract={contract} />
      <OrderCommerce number={order.number} view={commerce} />
      <Section title="History" id="history">
        <HistoryList entries={order.history} />
        <ReportLine actor={actor} kind="order" name={order.number} />
        {order.mayCancel ? <CancelOrder number={order.number} /> : null}
      </Section>
    </Page>
  );
}
