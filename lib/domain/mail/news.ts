import { certificateAmendedLetter } from "./letters/certificate-amended";
import { certificateReadyLetter } from "./letters/certificate-ready";
import { certificateReplacedLetter } from "./letters/certificate-replaced";
import { certificateWithdrawnLetter } from "./letters/certificate-withdrawn";
import { externalResultReadyLetter } from "./letters/external-result-ready";
import { holdEndedLetter } from "./letters/hold-ended";
import { orderAcceptedLetter } from "./letters/order-accepted";
import { orderCancelledLetter } from "./letters/order-cancelled";
import { orderChangedLetter } from "./letters/order-changed";
import type { NewsLetter, OrderNews } from "./letters/order-news";
import { orderRequestedLetter } from "./letters/order-requested";
import { promiseChangedLetter } from "./letters/promise-changed";
import { requestReceivedLetter } from "./letters/request-received";
import { sensorsReceivedLetter } from "./letters/sensors-received";
import type { MailKind } from "./types";

export type News = {
  readonly kind: MailKind;
  readonly to: "customer" | "desk";
  readonly compose: (news: OrderNews) => NewsLetter;
  /** Only while the order is in this state. */
  readonly whileAccepted?: true;
  /** Counted by what stands ready since, and not told while that is none; left out: by the events themselves. */
  readonly counts?: "ready-certificates";
};

/** Once its document is stored, not when it is signed: before that there is nothing to fetch. */
const ready: News = {
  ...{ kind: "certificate-ready", to: "customer", compose: certificateReadyLetter },
  counts: "ready-certificates",
};

/** What is told by letter, by the audit event that makes it news: from the facts, so that no operation can forget to. */
const newsOfAction: Readonly<Record<string, readonly News[]>> = {
  "order.requested": [
    { kind: "order-requested", to: "desk", compose: orderRequestedLetter },
    { kind: "request-received", to: "customer", compose: requestReceivedLetter },
  ],
  "order.accepted": [{ kind: "order-accepted", to: "customer", compose: orderAcceptedLetter }],
  "order.changed": [{ kind: "order-changed", to: "customer", compose: orderChangedLetter }],
  "order.cancelled": [{ kind: "order-cancelled", to: "customer", compose: orderCancelledLetter }],
  "hold.released": [{ kind: "hold-ended", to: "customer", compose: holdEndedLetter }],
  "sensor.received": [{ kind: "sensors-received", to: "customer", compose: sensorsReceivedLetter }],
  "certificate.issued": [ready],
  "certificate.attempt-failed": [ready],
  "provider.report-accepted": [
    { kind: "external-result-ready", to: "customer", compose: externalResultReadyLetter },
  ],
  "certificate.amended": [{ kind: "certificate-amended", to: "customer", compose: certificateAmendedLetter }],
  "certificate.replaced": [
    { kind: "certificate-replaced", to: "customer", compose: certificateReplacedLetter },
  ],
  "certificate.withdrawn": [
    { kind: "certificate-withdrawn", to: "customer", compose: certificateWithdrawnLetter },
    ready,
  ],
  // Before acceptance the day stands in the letter of the acceptance.
  "promise.given": [
    { kind: "promise-changed", to: "customer", compose: promiseChangedLetter, whileAccepted: true },
  ],
};

export const newsOf = (action: string): readonly News[] =>
  Object.hasOwn(newsOfAction, action) ? (newsOfAction[action] ?? []) : [];
