import { dayField, nameField, oneOf, type Query, readQuery, textField, uuidField } from "../list/query";
import { urgencies } from "./labels";
import { type OrderState, orderStates } from "./transitions";

/** open: what still asks for work. */
export const orderFilters = ["open", ...orderStates, "all"] as const;
export type OrderFilter = (typeof orderFilters)[number];

/** What of the orders in work is wanted: by what keeps them, or by what can be done. */
export const orderOnly = ["expected", "late", "risk", "send", "waiting", "declined", "held"] as const;
export type OrderOnly = (typeof orderOnly)[number];

export const orderOnlyLabels: Readonly<Record<OrderOnly, string>> = {
  expected: "Sensors still to come",
  late: "Late",
  risk: "At risk",
  send: "Something to send",
  waiting: "Waiting for the customer",
  declined: "Offer declined",
  held: "On hold",
};

const fields = {
  show: oneOf(orderFilters),
  only: oneOf(orderOnly),
  customer: uuidField,
  urgency: oneOf(urgencies),
  rules: /^[a-z-]{1,40}$/,
  from: dayField,
  to: dayField,
  due: dayField,
  q: textField,
  after: nameField,
  before: nameField,
} as const;

export type OrderQuery = Query<typeof fields>;

export const readOrderQuery = (given: Parameters<typeof readQuery>[1]): OrderQuery =>
  readQuery(fields, given);

/** What is asked for by `only` is in work; else what is open, unless told. */
export const shownOf = (query: OrderQuery): OrderFilter =>
  orderFilters.find((name) => name === query.show) ?? (query.only ? "all" : "open");

export const orderStatesOf = (filter: OrderFilter): readonly OrderState[] => {
  if (filter === "open") return ["requested", "recorded", "accepted"];
  return filter === "all" ? orderStates : [filter];
};
